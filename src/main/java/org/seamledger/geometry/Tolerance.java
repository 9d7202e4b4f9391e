package org.seamledger.geometry;

/**
 * How exact a model is taken to be. Always an argument, never global; a result shows the values in force.
 *
 * @param coincidenceM what lies within this distance lies together
 * @param gapM edges that face each other across at most this gap meet
 * @param upstandM a wall stands above a roof from this height on
 * @param facetTurnDegrees narrow facets that turn by less than this are one curved face
 */
public record Tolerance(double coincidenceM, double gapM, double upstandM, double facetTurnDegrees) {

  /** Two millimetres, five centimetres, ten centimetres, the turn of a 23-sided circle. */
  public static final Tolerance DEFAULT = new Tolerance(0.002, 0.05, 0.1, 16);
}
