package org.seamledger.ledger;

import java.util.Optional;

/**
 * A file that an analysis reads.
 *
 * @param name as its owner calls it: text for people, never a path to open
 * @param path where this process finds it; chosen by the program or on its command line, never by a request
 * @param bytes its size
 * @param role {@code model} or {@code system}
 * @param placement movement of a model that somebody asked for: {@code dx,dy,dz[,degrees[,factor]]}; empty where it lies as the models say
 */
public record StoredFile(String name, String path, long bytes, String role, Optional<String> placement) {

  public StoredFile(String name, String path, long bytes, String role) {
    this(name, path, bytes, role, Optional.empty());
  }

  /** The same file, placed otherwise. */
  public StoredFile placed(Optional<String> movement) {
    return new StoredFile(name, path, bytes, role, movement);
  }
}
