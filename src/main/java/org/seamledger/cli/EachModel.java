package org.seamledger.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.seamledger.export.GateModel;
import org.seamledger.finding.Severity;
import org.seamledger.run.Failure;
import org.seamledger.source.ModelServerException;

/**
 * Many models, each by itself, and one exit status: 3 where one can't be read, or else 1 where one fails, or else 0. One that can't be
 * read keeps none of the others from its turn.
 *
 * @param words models, folders and patterns, as the command line has them
 * @param limit severity that shuts the gate; empty: none does
 * @param output file for the result, or null for standard output
 */
record EachModel(List<String> words, Optional<Severity> limit, GateForm form, Path output) {

  int run(Session session, Function<String, GateModel> gate) {
    List<GateModel> models = GateModel.withoutEachOthers(ModelWords.expand(words).stream().map(word -> one(word, gate)).toList());
    session.print(Optional.ofNullable(output), out -> form.write(models, limit, out));
    models.forEach(m -> m.problem().ifPresent(session::complain));
    boolean isWhole = models.stream().allMatch(m -> m.problem().isEmpty());
    return !isWhole ? ExitStatus.UNREADABLE
        : models.stream().anyMatch(m -> m.status(limit) == GateModel.Status.FAIL) ? ExitStatus.FINDINGS : ExitStatus.DONE;
  }

  /** What keeps this model alone from being read is said of it; any other failure ends the command. */
  private static GateModel one(String word, Function<String, GateModel> gate) {
    try {
      return gate.apply(word);
    } catch (RuntimeException | OutOfMemoryError e) {
      Failure failure = Failure.of(e);
      if (failure instanceof Failure.OutOfMemory memory) {
        return GateModel.unreadable(word, word + ": needs more memory than " + memory.mebibytes() + " MiB");
      }
      boolean isServers = failure instanceof Failure.ServerFailure server
          && server.thrown().reason() != ModelServerException.Reason.NOT_SET_UP;
      if (isServers || failure instanceof Failure.UnreadableModel) {
        return GateModel.unreadable(word, failure.message());
      }
      throw e;
    }
  }
}
