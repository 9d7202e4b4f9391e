package org.seamledger.http;

import org.seamledger.ledger.SessionRows;

/** Those of several servers behind one address: who showed the token to one is known to all. */
record SharedSessions(SessionRows rows) implements Sessions {

  @Override
  public String open() {
    String value = Sessions.fresh();
    rows.open(value, LIFE.toMillis());
    return value;
  }

  @Override
  public boolean isOpen(String value) {
    return rows.isOpen(value, LIFE.toMillis());
  }

  @Override
  public void revoke(String value) {
    rows.revoke(value);
  }
}
