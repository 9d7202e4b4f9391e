package org.seamledger.quantity.system;

/** How a counterflashing ends at a wall. */
public enum Counterflashing {
  REGLET, SURFACE_MOUNTED
}
