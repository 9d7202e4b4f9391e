package org.seamledger.cluster;

import java.util.Optional;
import org.seamledger.cli.Main;

/** Where the process begins that {@code spark-submit} starts. */
public final class ClusterMain {

  private ClusterMain() {
  }

  /** Runs one command and exits with its status. */
  public static void main(String[] words) {
    Platform.prepare();
    Main.start(words, Optional.of(new SparkCluster()));
  }
}
