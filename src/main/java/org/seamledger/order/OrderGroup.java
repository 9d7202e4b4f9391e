package org.seamledger.order;

/** The parts of an order, as a shop buys them. */
public enum OrderGroup {
  PANELS, CLIPS, UNDERLAYMENT, SEALANTS, CLOSURES, TRIMS, CORNERS, PENETRATIONS, FASTENERS, DRAINAGE, SUNDRIES;

  /** The name in results. */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
