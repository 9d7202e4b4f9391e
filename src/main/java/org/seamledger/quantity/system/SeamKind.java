package org.seamledger.quantity.system;

/** How a seam is closed. */
public enum SeamKind {
  SINGLE_FOLD, DOUBLE_FOLD, SNAP
}
