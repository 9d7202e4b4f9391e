package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.detail.Kind;
import org.seamledger.detail.KindedJunction;
import org.seamledger.geometry.Vec3;
import org.seamledger.quantity.layout.EndCut;

/** Finds the junctions that the ends of panels lie at: lines of the same face that run along a cut edge, beside it. */
final class PanelEnds {

  /** Edge and line meet across gaps of modelling, 50 mm; where nothing lies so near, across those of walls, 150 mm. */
  private static final double NEAR = 0.06;
  private static final double FAR = 0.2;
  /** A line this far turned from an edge, as a cosine, is not its own: 15 degrees, a facet of a curve. */
  private static final double ALONG = 0.966;
  /** What covers less of an end than this share is a corner, not the end. */
  private static final double CORNER = 0.1;

  private final Map<String, List<Stretch>> byFace = new TreeMap<>();

  /** A straight stretch of a junction. */
  private record Stretch(KindedJunction junction, Vec3 from, Vec3 to) {

    /** Length of the edge that the stretch runs along no farther than this beside it, metres along the eave. */
    double along(EndCut cut, double reach) {
      Vec3 edge = cut.right().minus(cut.left());
      double length = edge.length();
      Vec3 run = to.minus(from);
      if (length < 1e-9 || run.length() < 1e-9 || Math.abs(edge.dot(run)) < ALONG * length * run.length()) {
        return 0;
      }
      Vec3 unit = edge.unit();
      double a = from.minus(cut.left()).dot(unit);
      double b = to.minus(cut.left()).dot(unit);
      double low = Math.max(0, Math.min(a, b));
      double high = Math.min(length, Math.max(a, b));
      if (high <= low) {
        return 0;
      }
      Vec3 onEdge = cut.left().plus(unit.times((low + high) / 2));
      Vec3 onLine = from.towards(to, ((low + high) / 2 - a) / (b - a));
      return onEdge.distance(onLine) > reach ? 0 : (high - low) / length * cut.widthM();
    }
  }

  PanelEnds(List<KindedJunction> junctions) {
    for (KindedJunction j : junctions) {
      if (j.type().family() != Kind.Family.ROUND) {
        List<Vec3> path = j.junction().path();
        for (int i = 1; i < path.size(); i++) {
          Stretch stretch = new Stretch(j, path.get(i - 1), path.get(i));
          j.junction().faces().forEach(f -> byFace.computeIfAbsent(f, k -> new ArrayList<>()).add(stretch));
        }
      }
    }
  }

  /** The junctions of an end, by id. */
  SortedMap<String, KindedJunction> at(String face, List<EndCut> end) {
    SortedMap<String, KindedJunction> found = new TreeMap<>();
    TreeMap<String, Double> covered = new TreeMap<>();
    double width = end.stream().mapToDouble(EndCut::widthM).sum();
    for (EndCut cut : end) {
      if (!cover(face, cut, NEAR, covered, found)) {
        cover(face, cut, FAR, covered, found);
      }
    }
    found.keySet().removeIf(id -> covered.get(id) < CORNER * width);
    return found;
  }

  private boolean cover(String face, EndCut cut, double reach, Map<String, Double> covered, Map<String, KindedJunction> found) {
    boolean any = false;
    for (Stretch s : byFace.getOrDefault(face, List.of())) {
      double along = s.along(cut, reach);
      if (along > 0) {
        any = true;
        covered.merge(s.junction().junction().id(), along, Double::sum);
        found.put(s.junction().junction().id(), s.junction());
      }
    }
    return any;
  }
}
