package org.seamledger.takeoff;

/** Receives how far an analysis is, on the thread that analyses. What it throws gives the analysis up, and passes through to the caller. */
@FunctionalInterface
public interface Progress {

  /** Tells nobody. */
  Progress SILENT = stage -> {};

  /** A stage begins. */
  void begins(Stage stage);

  /**
   * A stage goes on. Called very often, once for every face or line; must be quick.
   *
   * @param share of the stage that is done, 0 to 1
   */
  default void within(Stage stage, double share) {
  }
}
