package org.seamledger.ledger;

import java.util.List;
import java.util.Optional;

/**
 * One run of the program over one set of models.
 *
 * @param id random, not guessable
 * @param project the project it is a revision of
 * @param revision what people call it among the analyses of its project
 * @param title what people call it
 * @param files models in the order given, then the roof system where one was given
 * @param created instant, ISO 8601 UTC
 * @param finished instant, or empty
 * @param problemCode short code of what went wrong, or empty
 * @param problem one line for people, or empty
 */
public record StoredAnalysis(String id, String project, Revision revision, State state, String title, List<StoredFile> files,
    String created, Optional<String> finished, Optional<String> problemCode, Optional<String> problem) {

  public StoredAnalysis {
    files = List.copyOf(files);
  }
}
