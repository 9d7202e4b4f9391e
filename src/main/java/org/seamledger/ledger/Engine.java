package org.seamledger.ledger;

import java.sql.Connection;
import java.sql.SQLException;

/** A kind of database: how to reach it, and in which words it differs from the others. */
interface Engine {

  /** How messages name it: never with credentials. */
  String name();

  /**
   * Opens a connection that this process alone may use from now on, without automatic commits.
   *
   * @throws SQLException where it can't be reached
   * @throws LedgerException where another server uses it, or it can't hold what we store
   */
  Connection connect() throws SQLException;

  /** Turns the words of the {@link Schema} into this engine's own. */
  String translate(String definition);

  /** Whether a failure means that the connection is gone, so that another one may help. */
  boolean isLost(SQLException e);
}
