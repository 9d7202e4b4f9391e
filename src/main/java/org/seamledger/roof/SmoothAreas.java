package org.seamledger.roof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.DisjointSets;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;

/**
 * How large the surface is that a piece of top surface belongs to, where a curve is cut into facets: the piece with all that adjoin it, one
 * by one, turning by less than a facet's step.
 */
final class SmoothAreas {

  private record Node(TopSurface top, TopSurface.Piece piece, int number, Box3 box, double area) {
  }

  private final double cosine;
  private final double coincidenceM;
  private final Map<Part, Map<TopSurface, List<Integer>>> byTop = new HashMap<>();
  private final Map<Part, DisjointSets> sets = new HashMap<>();
  private final Map<Part, double[]> areas = new HashMap<>();

  SmoothAreas(List<TopSurface> tops, Tolerance tolerance) {
    this.cosine = Math.cos(Math.toRadians(tolerance.facetTurnDegrees()));
    this.coincidenceM = tolerance.coincidenceM();
    Map<Part, List<Node>> byPart = new HashMap<>();
    for (TopSurface top : tops) {
      for (TopSurface.Piece piece : top.pieces()) {
        List<Node> nodes = byPart.computeIfAbsent(piece.part(), k -> new ArrayList<>());
        Map<TopSurface, List<Integer>> numbers = byTop.computeIfAbsent(piece.part(), k -> new IdentityHashMap<>());
        piece.region().parts().forEach(r -> {
          numbers.computeIfAbsent(top, k -> new ArrayList<>()).add(nodes.size());
          nodes.add(new Node(top, piece, nodes.size(), TopSurface.box(top.plane(), r), r.area()));
        });
      }
    }
    byPart.forEach(this::join);
  }

  private void join(Part part, List<Node> nodes) {
    DisjointSets joined = new DisjointSets(nodes.size());
    PlanIndex<Node> index = new PlanIndex<>(nodes, Node::box);
    for (Node n : nodes) {
      Vec3 normal = n.top().plane().normal();
      for (Node o : index.overlapping(n.box().grown(coincidenceM))) {
        if (o.number() > n.number() && o.top() != n.top() && normal.dot(o.top().plane().normal()) > cosine) {
          joined.join(n.number(), o.number());
        }
      }
    }
    double[] sums = new double[nodes.size()];
    nodes.forEach(n -> sums[joined.root(n.number())] += n.area());
    sets.put(part, joined);
    areas.put(part, sums);
  }

  /** Whether a piece of one surface of the element lies in a smaller whole than what the element has of another; they may be one curve. */
  boolean isSmaller(Part part, TopSurface top, int pieceNumber, double pieceArea, TopSurface main) {
    DisjointSets joined = sets.get(part);
    int own = joined.root(byTop.get(part).get(top).get(pieceNumber));
    double largest = 0;
    for (int i : byTop.get(part).get(main)) {
      if (joined.root(i) == own) {
        return main.of(part).area() > pieceArea;
      }
      largest = Math.max(largest, areas.get(part)[joined.root(i)]);
    }
    return Math.max(largest, main.of(part).area()) > areas.get(part)[own];
  }
}
