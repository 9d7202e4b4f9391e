package org.seamledger.ledger;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;

/** A kind of database: how to reach it, and in which words it differs from the others. */
interface Engine {

  /** How messages name it: never with credentials. */
  String name();

  /**
   * Opens a connection to a storage that this process alone may use from now on, or shares with others like it; without automatic commits.
   *
   * @throws SQLException where it can't be reached
   * @throws LedgerException where another server uses it, or it can't hold what we store
   */
  Connection connect() throws SQLException;

  /** Turns the words of the {@link StorageSchema} into this engine's own. */
  String translate(String definition);

  /** The query for the names of the tables and views that stand where ours belong, in order. */
  String tables();

  /** The query for the names of a table's columns; the table's name is the one value. */
  String columns();

  /** What to do where the place is taken by another program. */
  String elsewhere();

  /** How long a start waits for it where it isn't up yet. */
  Duration patience();

  /** Whether a failure means that another process's transaction came in the way, and that the same may succeed now. */
  default boolean isConflict(SQLException e) {
    return false;
  }

  /**
   * Brings the tables up to date, on a new connection.
   *
   * @throws LedgerException where that can't be, or not now
   */
  default void bringUpToDate(Connection connection, List<String> steps) throws SQLException {
    StorageSchema.bringUpToDate(connection, this, steps);
  }

  /** Whether a second connection of this process may read what was kept while the first writes. */
  default boolean readsBeside() {
    return false;
  }

  /** Whether a failure means that the connection is gone, so that another one may help. */
  boolean isLost(SQLException e);

  /** What a failure means. */
  StorageFault explain(SQLException e);
}
