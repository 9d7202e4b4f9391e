package org.seamledger.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** Where analyses, reviews and downloaded models are kept. */
final class DataFolder {

  @Option(names = "--data", paramLabel = "DIR",
      description = "Where analyses and reviews are kept (default: seamledger in the user's data folder).")
  private Path data;

  Path path() {
    return data == null ? ofUser() : data;
  }

  /** Whether somebody named it. */
  boolean isNamed() {
    return data != null;
  }

  private static Path ofUser() {
    String home = System.getenv("XDG_DATA_HOME");
    Path base = home == null || home.isBlank() ? Path.of(System.getProperty("user.home"), ".local", "share") : Path.of(home);
    return base.resolve("seamledger");
  }
}
