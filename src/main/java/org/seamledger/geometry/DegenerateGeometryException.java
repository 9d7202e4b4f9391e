package org.seamledger.geometry;

/** Geometry that can't be computed with: coordinates beyond all numbers, directions of no length, outlines that are a tangle. */
public final class DegenerateGeometryException extends IllegalArgumentException {

  private static final long serialVersionUID = 1;

  public DegenerateGeometryException(String message) {
    super(message);
  }

  DegenerateGeometryException(String message, Throwable cause) {
    super(message, cause);
  }
}
