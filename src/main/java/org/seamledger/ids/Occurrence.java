package org.seamledger.ids;

/** Whether something has to be, may be or must not be. */
public enum Occurrence {
  REQUIRED, OPTIONAL, PROHIBITED
}
