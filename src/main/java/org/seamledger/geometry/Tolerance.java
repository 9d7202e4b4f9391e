package org.seamledger.geometry;

/**
 * How exact a model is taken to be. Always an argument, never global; a result shows the values applied.
 *
 * @param coincidenceM what lies within this distance lies together
 * @param gapM edges that face each other across at most this gap meet
 * @param upstandM a wall stands above a roof from this height on
 * @param facetTurnDegrees narrow facets that turn by less than this are one curved face
 * @param flashingM a modelled flashing belongs to a junction within this distance, a gutter within twice of it (common practice, no source)
 */
public record Tolerance(double coincidenceM, double gapM, double upstandM, double facetTurnDegrees, double flashingM) {

  /** Two millimetres, five centimetres, ten centimetres, the turn of a 23-sided circle, half the girth of a usual flashing. */
  public static final Tolerance DEFAULT = new Tolerance(0.002, 0.05, 0.1, 16, 0.15);
}
