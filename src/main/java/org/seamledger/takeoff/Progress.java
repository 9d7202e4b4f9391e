package org.seamledger.takeoff;

/** Hears how far an analysis is; called on the thread that analyses, at the start of each stage. */
@FunctionalInterface
public interface Progress {

  /** Tells nobody. */
  Progress SILENT = stage -> {
  };

  /**
   * A stage begins.
   *
   * @throws RuntimeException to give the analysis up; it passes through to the caller
   */
  void begins(Stage stage);
}
