package org.seamledger.roof;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Vec3;

/**
 * Stretches of outline that end in the open, one after the other from facet to facet. The end of a vault may be cut into stretches of a few
 * millimetres, but together they are long; what is short altogether is left over where slivers among a curve's triangles are no surface.
 */
final class OpenChains {

  private final List<BoundaryEdge> edges;
  private final double gapM;
  private final double tinyM;
  private final double facingCosine;
  private final PlanIndex<Integer> open;

  /**
   * @param edges facet by facet
   * @param gapM ends no farther apart (metres) meet
   * @param limits which edges face each other, and how short (metres) a chain is that is no outline
   */
  OpenChains(List<BoundaryEdge> edges, double gapM, SurfaceLimits.Stretches limits) {
    this.edges = edges;
    this.gapM = gapM;
    this.tinyM = limits.tinyM();
    this.facingCosine = limits.cosine();
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < edges.size(); i++) {
      if (NarrowGaps.isOpen(edges.get(i))) {
        numbers.add(i);
      }
    }
    this.open = new PlanIndex<>(numbers, i -> Box3.of(List.of(edges.get(i).from(), edges.get(i).to())));
  }

  /** Whether a stretch is open, and with all that are joined to it shorter than an outline is. */
  boolean isTiny(int i) {
    double length = edges.get(i).lengthM();
    if (length >= tinyM || !NarrowGaps.isOpen(edges.get(i))) {
      return false;
    }
    Set<Integer> reached = new TreeSet<>(Set.of(i));
    Deque<Integer> next = new ArrayDeque<>(reached);
    while (!next.isEmpty() && length < tinyM) {
      BoundaryEdge e = edges.get(next.remove());
      for (int j : open.overlapping(Box3.of(List.of(e.from(), e.to())).grown(gapM))) {
        if (meet(e, edges.get(j)) && reached.add(j)) {
          next.add(j);
          length += edges.get(j).lengthM();
        }
      }
    }
    return length < tinyM;
  }

  /** Whether one goes on in the other; what faces it, across what was left out, does not. */
  private boolean meet(BoundaryEdge a, BoundaryEdge b) {
    Vec3 d = a.to().minus(a.from());
    Vec3 e = b.to().minus(b.from());
    return d.dot(e) >= -facingCosine * d.length() * e.length()
        && List.of(a.from(), a.to()).stream().anyMatch(p -> p.distance(b.from()) <= gapM || p.distance(b.to()) <= gapM);
  }

  /** The stretches before and after one in the outline of its facet; none where an end is not exactly theirs. */
  List<BoundaryEdge> beside(int i) {
    BoundaryEdge e = edges.get(i);
    int first = i;
    while (first > 0 && edges.get(first - 1).facet() == e.facet()) {
      first--;
    }
    List<BoundaryEdge> found = new ArrayList<>(2);
    for (int j = first; j < edges.size() && edges.get(j).facet() == e.facet(); j++) {
      if (j != i && (edges.get(j).to().equals(e.from()) || edges.get(j).from().equals(e.to()))) {
        found.add(edges.get(j));
      }
    }
    return found;
  }
}
