package org.seamledger.bcf;

/** Versions that are written. */
public enum BcfVersion {
  V2_1("2.1"), V3_0("3.0");

  private final String id;

  BcfVersion(String id) {
    this.id = id;
  }

  /** As {@code bcf.version} has it. */
  public String id() {
    return id;
  }
}
