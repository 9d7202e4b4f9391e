package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

  private final Map<String, List<Stretch>> byFace = new HashMap<>();

  /**
   * What panels end at: most at one line, and hundreds at the same.
   *
   * @param junctions ordered by id
   * @param ids of the junctions
   * @param kinds sorted, each once
   * @param still the end of a panel that doesn't move there
   */
  record Met(List<KindedJunction> junctions, List<String> ids, List<String> kinds, PanelEnd still) {

    static final Met NOTHING = Met.of(List.of());

    static Met of(List<KindedJunction> junctions) {
      // A list of a stream may hold nulls, and would be copied into each end; copies of these are the same objects.
      List<String> ids = List.copyOf(junctions.stream().map(j -> j.junction().id()).toList());
      List<String> kinds = List.copyOf(junctions.stream().map(KindedJunction::kind).distinct().sorted().toList());
      return new Met(junctions, ids, kinds, new PanelEnd(ids, kinds, 0, 0, 0));
    }
  }

  /** A straight stretch of a junction. */
  private static final class Stretch {
    private final Met alone;
    private final Vec3 from;
    private final Vec3 to;
    private final Vec3 run;
    private final double lengthM;

    Stretch(Met alone, Vec3 from, Vec3 to) {
      this.alone = alone;
      this.from = from;
      this.to = to;
      this.run = to.minus(from);
      this.lengthM = run.length();
    }

    /** Length of the edge that the stretch runs along no farther than this beside it, metres along the eave. */
    double along(Edge edge, double reach) {
      if (lengthM < 1e-9 || Math.abs(edge.way.dot(run)) < ALONG * edge.lengthM * lengthM) {
        return 0;
      }
      double a = edge.at(from);
      double b = edge.at(to);
      double low = Math.max(0, Math.min(a, b));
      double high = Math.min(edge.lengthM, Math.max(a, b));
      if (high <= low) {
        return 0;
      }
      Vec3 onEdge = edge.cut.left().plus(edge.unit.times((low + high) / 2));
      Vec3 onLine = from.towards(to, ((low + high) / 2 - a) / (b - a));
      return onEdge.distance(onLine) > reach ? 0 : (high - low) / edge.lengthM * edge.cut.widthM();
    }
  }

  /** The edge that a panel is cut at; none that is a point. */
  private record Edge(EndCut cut, Vec3 way, double lengthM, Vec3 unit) {

    static Edge of(EndCut cut) {
      Vec3 way = cut.right().minus(cut.left());
      double length = way.length();
      return length < 1e-9 ? null : new Edge(cut, way, length, way.unit());
    }

    /** How far along it a point lies, metres. */
    double at(Vec3 p) {
      Vec3 left = cut.left();
      return (p.x() - left.x()) * unit.x() + (p.y() - left.y()) * unit.y() + (p.z() - left.z()) * unit.z();
    }
  }

  /** Junctions of an end while they are found, with how much of it each covers, metres along the eave. */
  private static final class Found {
    private final List<Met> lines = new ArrayList<>();
    private final List<Double> covered = new ArrayList<>();

    void add(Met alone, double along) {
      for (int i = 0; i < lines.size(); i++) {
        if (lines.get(i) == alone) {
          covered.set(i, covered.get(i) + along);
          return;
        }
      }
      lines.add(alone);
      covered.add(along);
    }

    Met beyond(double least) {
      List<Met> some = new ArrayList<>(lines.size());
      for (int i = 0; i < lines.size(); i++) {
        if (covered.get(i) >= least) {
          some.add(lines.get(i));
        }
      }
      return some.isEmpty() ? Met.NOTHING
          : some.size() == 1 ? some.get(0)
          : Met.of(some.stream().map(m -> m.junctions().get(0)).sorted(BY_ID).toList());
    }
  }

  private static final Comparator<KindedJunction> BY_ID = Comparator.comparing(j -> j.junction().id());

  PanelEnds(List<KindedJunction> junctions) {
    for (KindedJunction j : junctions) {
      if (j.type().family() != Kind.Family.ROUND) {
        List<Vec3> path = j.junction().path();
        Met alone = Met.of(List.of(j));
        for (int i = 1; i < path.size(); i++) {
          Stretch stretch = new Stretch(alone, path.get(i - 1), path.get(i));
          j.junction().faces().forEach(f -> byFace.computeIfAbsent(f, k -> new ArrayList<>()).add(stretch));
        }
      }
    }
  }

  /** The junctions of an end. */
  Met at(String face, List<EndCut> end) {
    List<Stretch> stretches = byFace.getOrDefault(face, List.of());
    Found found = new Found();
    double width = end.size() == 1 ? end.get(0).widthM() : end.stream().mapToDouble(EndCut::widthM).sum();
    for (EndCut cut : end) {
      Edge edge = Edge.of(cut);
      if (edge != null && !cover(stretches, edge, NEAR, found)) {
        cover(stretches, edge, FAR, found);
      }
    }
    return found.beyond(CORNER * width);
  }

  private static boolean cover(List<Stretch> stretches, Edge edge, double reach, Found found) {
    boolean any = false;
    for (Stretch s : stretches) {
      double along = s.along(edge, reach);
      if (along > 0) {
        any = true;
        found.add(s.alone, along);
      }
    }
    return any;
  }
}
