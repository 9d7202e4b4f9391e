package org.seamledger.ledger;

import java.util.Optional;

/**
 * A file that an analysis reads.
 *
 * @param name as its owner calls it: text for people, never a path to open
 * @param path where this process finds it; chosen by the program or on its command line, never by a request
 * @param bytes its size
 * @param role {@code model} or {@code system}
 * @param origin the revision on a server of models that it is a copy of, or empty
 * @param placement movement of a model that somebody asked for: {@code dx,dy,dz[,degrees[,factor]]}; empty where it lies as the models say
 */
public record StoredFile(String name, String path, long bytes, String role, Optional<Origin> origin, Optional<String> placement) {

  /** A file that comes from no server and lies as the models say. */
  public StoredFile(String name, String path, long bytes, String role) {
    this(name, path, bytes, role, Optional.empty(), Optional.empty());
  }

  /** The same file as a copy of a revision on a server. */
  public StoredFile from(Origin server) {
    return new StoredFile(name, path, bytes, role, Optional.of(server), placement);
  }

  /** The same file, placed otherwise. */
  public StoredFile placed(Optional<String> movement) {
    return new StoredFile(name, path, bytes, role, origin, movement);
  }

  /** The same file, now that its size is known. */
  public StoredFile sized(long size) {
    return new StoredFile(name, path, size, role, origin, placement);
  }

  /** Whether it is a model. */
  public boolean isModel() {
    return role.equals("model");
  }
}
