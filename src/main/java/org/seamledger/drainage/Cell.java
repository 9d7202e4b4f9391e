package org.seamledger.drainage;

/**
 * A part of a facet between two lines along the slope, with one edge above and one below, in the facet's frame: u level, v up the slope.
 *
 * @param node its water, in u
 * @param low index of the edge below
 * @param high index of the edge above
 * @param lowAtFrom v of the lower edge at the cell's least u; metres, as the others
 */
record Cell(Node node, int low, int high, double lowAtFrom, double lowAtTo, double highAtFrom, double highAtTo) {

  double lowAt(double u) {
    return between(u, lowAtFrom, lowAtTo);
  }

  double highAt(double u) {
    return between(u, highAtFrom, highAtTo);
  }

  private double between(double u, double atFrom, double atTo) {
    double t = Math.max(0, Math.min(1, (u - node.from) / (node.to - node.from)));
    return atFrom + (atTo - atFrom) * t;
  }

  /** How far (metres) a point lies above or below the cell; zero inside. */
  double outside(double u, double v) {
    return Math.max(0, Math.max(lowAt(u) - v, v - highAt(u)));
  }
}
