package org.seamledger.ledger;

import java.nio.file.Path;

/**
 * Where the models are that several processes share.
 *
 * @param folder one that all of them have in common; or, where they are in the database, one of this machine's for copies
 * @param inDatabase whether they are large objects of the database, for processes that share no disk
 */
public record ModelPlace(Path folder, boolean inDatabase) {

  /** A folder that all have in common, wherever each machine has it mounted. */
  public static ModelPlace folder(Path shared) {
    return new ModelPlace(shared, false);
  }

  /** The database. */
  public static ModelPlace database(Path copies) {
    return new ModelPlace(copies, true);
  }
}
