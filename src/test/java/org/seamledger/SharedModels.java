package org.seamledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** Real models that don't come with the project; tests that need them are skipped where they are absent. */
public final class SharedModels {

  private SharedModels() {
  }

  /** The folder of the models: property {@code seamledger.shared}, environment {@code SEAMLEDGER_SHARED}, or beside the project. */
  public static Path folder() {
    for (String place : new String[] {System.getProperty("seamledger.shared"), System.getenv("SEAMLEDGER_SHARED"), "../shared",
        "../../shared"}) {
      if (place != null && Files.isDirectory(Path.of(place, "ifc"))) {
        return Path.of(place, "ifc");
      }
    }
    return Assumptions.abort("no shared models here");
  }

  /** All models, by name. */
  public static List<Path> all() throws IOException {
    try (Stream<Path> files = Files.list(folder())) {
      return files.filter(f -> f.getFileName().toString().endsWith(".ifc")).sorted().toList();
    }
  }

  /** The one model whose name starts so. */
  public static Path named(String prefix) throws IOException {
    return all().stream().filter(f -> f.getFileName().toString().startsWith(prefix)).findFirst()
        .orElseGet(() -> Assumptions.abort("no shared model " + prefix));
  }
}
