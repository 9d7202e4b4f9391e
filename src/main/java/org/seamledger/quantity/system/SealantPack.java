package org.seamledger.quantity.system;

/** What gun sealant comes in. */
public enum SealantPack {
  CARTRIDGE, SAUSAGE, PAIL
}
