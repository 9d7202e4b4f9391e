package org.seamledger.ledger;

/**
 * What a failure of a database means, in words for whoever runs the server.
 *
 * @param reason what callers are told
 * @param text goes on from the database's name: what is wrong and what to do, one line with its full stop, without statement, values
 *     and password
 * @param passes whether it may go by itself, so that a start waits for it
 */
record StorageFault(LedgerException.Reason reason, String text, boolean passes) {

  static StorageFault lasting(LedgerException.Reason reason, String text) {
    return new StorageFault(reason, text, false);
  }

  static StorageFault passing(String text) {
    return new StorageFault(LedgerException.Reason.UNREACHABLE, text, true);
  }
}
