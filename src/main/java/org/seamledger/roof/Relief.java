package org.seamledger.roof;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * Gives an element that is modelled in relief (profiled sheet, corrugations, courses of tiles) its main plane.
 *
 * <p>Relief is a top surface of many narrow pieces that all lie within a thin band under one plane and reach up to it everywhere: in every
 * quarter of the element's extent, along the slope and across it. A shallow vault fails the last test: only its middle reaches up. The
 * plane is the least-squares plane through the pieces, raised to the crests; its area is what the pieces cover in plan.
 */
final class Relief {

  /** Parts of the extent in each direction that have to be reached. */
  private static final int QUARTERS = 4;
  /** Below this share of the square of the moments' sum their determinant is rounding: the corners lie on a line. */
  private static final double ON_A_LINE = 1e-9;

  private record Piece(TopSurface top, Region region) {
    Vec3 middle() {
      return TopSurface.at(top.plane(), region.centroid());
    }
  }

  private final MeshCurves curves;
  private final SurfaceLimits.Profiles limits;

  private Relief(MeshCurves curves, SurfaceLimits.Profiles limits) {
    this.curves = curves;
    this.limits = limits;
  }

  /** The same top surfaces, those of elements in relief replaced by one for each such element. */
  static List<TopSurface> flattened(List<TopSurface> tops, MeshCurves curves, SurfaceLimits.Profiles limits) {
    return new Relief(curves, limits).flattened(tops);
  }

  private List<TopSurface> flattened(List<TopSurface> tops) {
    List<TopSurface> flat = new ArrayList<>();
    Set<Part> inRelief = new HashSet<>();
    piecesByPart(tops).forEach((part, pieces) -> {
      Plane main = pieces.size() < limits.fewestPieces() || !mostlyNarrow(pieces) || mostlyCurved(pieces) ? null : mainPlane(pieces);
      if (main != null && fitsUnder(main, pieces)) {
        flat.add(TopSurface.of(main, List.of(new TopSurface.Piece(part, covered(main, pieces)))));
        inRelief.add(part);
      }
    });
    if (flat.isEmpty()) {
      return tops;
    }
    List<TopSurface> all = new ArrayList<>(flat);
    for (TopSurface top : tops) {
      List<TopSurface.Piece> rest = top.pieces().stream().filter(p -> !inRelief.contains(p.part())).toList();
      if (rest.size() == top.pieces().size()) {
        all.add(top);
      } else if (!rest.isEmpty()) {
        all.add(TopSurface.of(top.plane(), rest));
      }
    }
    return all;
  }

  private static Map<Part, List<Piece>> piecesByPart(List<TopSurface> tops) {
    Map<Part, List<Piece>> byPart = new LinkedHashMap<>();
    for (TopSurface top : tops) {
      for (TopSurface.Piece p : top.pieces()) {
        List<Piece> pieces = byPart.computeIfAbsent(p.part(), k -> new ArrayList<>());
        p.region().parts().forEach(r -> pieces.add(new Piece(top, r)));
      }
    }
    return byPart;
  }

  private boolean mostlyCurved(List<Piece> pieces) {
    double all = pieces.stream().mapToDouble(p -> p.region().area()).sum();
    return pieces.stream().filter(p -> curves.isCurved(p.top().plane())).mapToDouble(p -> p.region().area()).sum() > all / 2;
  }

  private boolean mostlyNarrow(List<Piece> pieces) {
    double all = 0;
    double narrow = 0;
    for (Piece p : pieces) {
      all += p.region().area();
      narrow += p.region().isNarrowerThan(limits.narrowM()) ? p.region().area() : 0;
    }
    return narrow >= limits.narrowShare() * all;
  }

  /**
   * z = a·x + b·y + c by least squares about the mean, weighted by area, raised to the highest corner; null where the corners lie on a
   * line.
   * Corners carry the direction of long strips, whose middles alone lie on one line.
   */
  private Plane mainPlane(List<Piece> pieces) {
    Vec3 mean = mean(pieces);
    double xx = 0;
    double xy = 0;
    double yy = 0;
    double xz = 0;
    double yz = 0;
    for (Piece p : pieces) {
      for (Region.Ring ring : p.region().rings()) {
        for (Vec2 corner : ring.points()) {
          Vec3 d = TopSurface.at(p.top().plane(), corner).minus(mean);
          double k = p.region().area() / ring.points().size();
          xx += k * d.x() * d.x();
          xy += k * d.x() * d.y();
          yy += k * d.y() * d.y();
          xz += k * d.x() * d.z();
          yz += k * d.y() * d.z();
        }
      }
    }
    double det = xx * yy - xy * xy;
    if (det < ON_A_LINE * (xx + yy) * (xx + yy)) {
      return null;
    }
    double a = (xz * yy - yz * xy) / det;
    double b = (yz * xx - xz * xy) / det;
    Plane plane = Plane.through(mean, new Vec3(-a, -b, 1));
    double most = pieces.stream().mapToDouble(p -> highest(plane, p)).max().orElse(0);
    return plane.moved(most);
  }

  private static Vec3 mean(List<Piece> pieces) {
    double w = 0;
    Vec3 sum = Vec3.ZERO;
    for (Piece p : pieces) {
      w += p.region().area();
      sum = sum.plus(p.middle().times(p.region().area()));
    }
    return sum.times(1 / w);
  }

  private double highest(Plane plane, Piece p) {
    return outline(p).stream().mapToDouble(plane::height).max().orElse(Double.NEGATIVE_INFINITY);
  }

  /** Points along the outline of a piece, its corners among them, evenly on each side. */
  private List<Vec3> outline(Piece p) {
    List<Vec3> points = new ArrayList<>();
    for (Region.Ring ring : p.region().rings()) {
      List<Vec2> c = ring.points();
      for (int i = 0; i < c.size(); i++) {
        for (int k = 0; k < limits.pointsOnSide(); k++) {
          points.add(TopSurface.at(p.top().plane(), c.get(i).towards(c.get((i + 1) % c.size()), k / (double) limits.pointsOnSide())));
        }
      }
    }
    return points;
  }

  private boolean fitsUnder(Plane main, List<Piece> pieces) {
    List<Vec3> all = pieces.stream().flatMap(p -> outline(p).stream()).toList();
    double lowest = all.stream().mapToDouble(main::height).min().orElse(0);
    double crest = Math.max(limits.crestM(), limits.crestShare() * -lowest);
    return lowest > -limits.deepestM() && lowest < -limits.shallowestM()
        && reachesEverywhere(all, main, crest, true) && reachesEverywhere(all, main, crest, false);
  }

  private static boolean reachesEverywhere(List<Vec3> points, Plane main, double crest, boolean across) {
    double min = points.stream().mapToDouble(p -> across ? main.u(p) : main.v(p)).min().orElse(0);
    double max = points.stream().mapToDouble(p -> across ? main.u(p) : main.v(p)).max().orElse(0);
    boolean[] reached = new boolean[QUARTERS];
    for (Vec3 p : points) {
      if (main.height(p) >= -crest) {
        double t = ((across ? main.u(p) : main.v(p)) - min) / Math.max(Double.MIN_NORMAL, max - min);
        reached[Math.min(QUARTERS - 1, (int) (t * QUARTERS))] = true;
      }
    }
    for (boolean quarter : reached) {
      if (!quarter) {
        return false;
      }
    }
    return true;
  }

  private Region covered(Plane main, List<Piece> pieces) {
    List<Region> regions = pieces.stream().map(p -> p.region().projected(p.top().plane(), main, Vec3.Z)).toList();
    return Region.unionOf(regions).grown(limits.jointM() / 2).grown(-limits.jointM() / 2).simplified(limits.simplifyM());
  }
}
