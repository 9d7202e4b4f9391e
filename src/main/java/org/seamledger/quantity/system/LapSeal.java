package org.seamledger.quantity.system;

/** What seals laps of flashings. */
public enum LapSeal {
  SEALANT, TAPE
}
