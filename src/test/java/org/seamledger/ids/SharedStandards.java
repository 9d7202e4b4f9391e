package org.seamledger.ids;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.seamledger.SharedModels;

/**
 * What the standard's body publishes with IDS 1.0: the XML schema, the documents, the test cases. They don't come with the project (their
 * licence is CC BY-ND 4.0); tests that need them are skipped where they are absent.
 */
final class SharedStandards {

  private SharedStandards() {
  }

  static Path file(String name) {
    Path file = SharedModels.folder().resolve("../standards/ids").resolve(name).normalize();
    return Files.exists(file) ? file : Assumptions.abort("no " + name + " of the standard here");
  }

  /** The IDS files of all cases, by folder and name. */
  static List<Path> cases() throws IOException {
    try (Stream<Path> files = Files.walk(file("testcases"))) {
      return files.filter(f -> f.getFileName().toString().endsWith(".ids")).sorted().toList();
    }
  }

  /** The model that a case is about. */
  static Path model(Path ids) {
    return ids.resolveSibling(ids.getFileName().toString().replaceFirst("\\.ids$", ".ifc"));
  }
}
