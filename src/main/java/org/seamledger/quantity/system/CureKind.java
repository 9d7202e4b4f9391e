package org.seamledger.quantity.system;

/** How a sealant sets. */
public enum CureKind {
  MOISTURE, SOLVENT_RELEASE, NONE
}
