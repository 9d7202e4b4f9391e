package org.seamledger.ifc.entity;

import org.seamledger.finding.Code;

/**
 * One thing in a model that can't be used. Whoever reads an item, a placement or a property catches it, reports a finding and goes on
 * with the rest.
 */
public final class Problem extends RuntimeException {

  private static final long serialVersionUID = 1;

  private final Code code;

  private Problem(Code code, String message) {
    super(message, null, false, false);
    this.code = code;
  }

  Code code() {
    return code;
  }

  public static Problem broken(String message) {
    return new Problem(Code.BROKEN_GEOMETRY, message);
  }

  public static Problem unsupported(String message) {
    return new Problem(Code.UNSUPPORTED_GEOMETRY, message);
  }

  static Problem dangling(String message) {
    return new Problem(Code.BROKEN_REFERENCE, message);
  }
}
