package org.seamledger.roof;

import java.util.List;
import org.seamledger.geometry.Vec3;

/**
 * A straight stretch of a facet's outline with one thing on its other side. Seen from above, the facet lies to its left.
 *
 * @param facet index into {@link Roof#facets()}
 * @param from its begin, metres
 * @param to its end, metres
 * @param contact what is on its other side
 * @param elements GlobalIds of the roof elements whose surface ends here, sorted
 */
public record BoundaryEdge(int facet, Vec3 from, Vec3 to, Contact contact, List<String> elements) {

  public BoundaryEdge {
    elements = List.copyOf(elements);
  }

  /** Length in space, metres. */
  public double lengthM() {
    return from.distance(to);
  }

  BoundaryEdge with(Contact other) {
    return new BoundaryEdge(facet, from, to, other, elements);
  }

  /** The same where facets are counted from another number on. */
  BoundaryEdge shifted(int by) {
    return new BoundaryEdge(facet + by, from, to, contact instanceof Contact.OtherFacet other ? other.shifted(by) : contact, elements);
  }
}
