package org.seamledger.roof;

import java.util.List;
import org.seamledger.geometry.Vec3;

/**
 * A straight stretch of a facet's outline with one thing on its other side. Seen from above, the facet lies to its left.
 *
 * @param facet index into {@link Roof#facets()}
 * @param elements GlobalIds of the roof elements whose surface ends here, sorted
 */
public record BoundaryEdge(int facet, Vec3 from, Vec3 to, Contact contact, List<String> elements) {

  /** Stretches shorter than this (metres) are slack of the model: they belong to the line beside them whatever their direction. */
  public static final double TINY = 0.031;

  public BoundaryEdge {
    elements = List.copyOf(elements);
  }

  public double lengthM() {
    return from.distance(to);
  }
}
