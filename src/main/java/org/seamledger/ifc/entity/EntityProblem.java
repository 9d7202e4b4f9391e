package org.seamledger.ifc.entity;

import org.seamledger.finding.Code;

/**
 * One thing in a model that can't be used. Whoever reads an item, a placement or a property catches it, reports a finding and goes on
 * with the rest.
 */
public final class EntityProblem extends RuntimeException {

  private static final long serialVersionUID = 1;

  private final Code code;

  private EntityProblem(Code code, String message) {
    super(message, null, false, false);
    this.code = code;
  }

  Code code() {
    return code;
  }

  public static EntityProblem broken(String message) {
    return new EntityProblem(Code.BROKEN_GEOMETRY, message);
  }

  public static EntityProblem unsupported(String message) {
    return new EntityProblem(Code.UNSUPPORTED_GEOMETRY, message);
  }

  /** Finite, but nowhere near what a building can be. */
  public static EntityProblem outOfBounds(String message) {
    return new EntityProblem(Code.OUT_OF_BOUNDS, message);
  }

  static EntityProblem dangling(String message) {
    return new EntityProblem(Code.BROKEN_REFERENCE, message);
  }
}
