package org.seamledger.watch;

import org.seamledger.source.ServedProject;

/** Decides which of a server's projects are watched; asked anew in every round. */
@FunctionalInterface
public interface WatchTarget {

  boolean wants(String server, ServedProject project);

  /** Whether there is anything to watch on a server: where there is not, it is left in peace. */
  default boolean wantsAny(String server) {
    return true;
  }
}
