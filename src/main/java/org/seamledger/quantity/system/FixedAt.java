package org.seamledger.quantity.system;

/** The one line where a panel can't move. */
public enum FixedAt {
  EAVE, RIDGE, MIDDLE, BOTH_ENDS
}
