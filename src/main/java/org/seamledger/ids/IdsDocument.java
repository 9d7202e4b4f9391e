package org.seamledger.ids;

import java.util.List;

/**
 * An IDS file: what it requires, or why it is no valid one.
 *
 * @param file as the user named it
 * @param specifications none where there are problems
 */
public record IdsDocument(String file, String title, List<Specification> specifications, List<IdsProblem> problems) {

  public IdsDocument {
    specifications = List.copyOf(specifications);
    problems = List.copyOf(problems);
  }

  public boolean valid() {
    return problems.isEmpty();
  }
}
