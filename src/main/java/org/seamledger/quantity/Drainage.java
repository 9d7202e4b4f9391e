package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.physics.Rain;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;

/** Where water runs: the catchment of valleys, eaves that end at walls, drops on lower faces. */
final class Drainage {

  /** Ends of lines this close meet, metres. */
  private static final double MEETS = 0.05;
  /** How far beyond an edge water drops, metres. */
  private static final double BEYOND = 0.1;
  /** Less is no drop, metres. */
  private static final double LEAST_DROP = 0.1;

  private final RoofLayout layout;
  private final RoofSystem system;
  private final List<Footprint> footprints = new ArrayList<>();

  /** A facet and its extent in plan. */
  private record Footprint(Facet facet, double minX, double minY, double maxX, double maxY) {
    static Footprint of(Facet facet) {
      double[] box = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
      for (Region.Ring ring : facet.area().rings()) {
        for (Vec2 p : ring.points()) {
          Vec3 at = facet.plane().at(p.u(), p.v());
          box[0] = Math.min(box[0], at.x());
          box[1] = Math.min(box[1], at.y());
          box[2] = Math.max(box[2], at.x());
          box[3] = Math.max(box[3], at.y());
        }
      }
      return new Footprint(facet, box[0], box[1], box[2], box[3]);
    }

    boolean covers(double x, double y) {
      if (x < minX || x > maxX || y < minY || y > maxY) {
        return false;
      }
      Plane plane = facet.plane();
      Vec3 on = new Vec3(x, y, plane.elevation(x, y));
      return facet.area().contains(new Vec2(plane.u(on), plane.v(on)));
    }
  }

  Drainage(List<RoofFace> faces, RoofLayout layout, RoofSystem system) {
    this.layout = layout;
    this.system = system;
    faces.forEach(face -> face.facets().forEach(facet -> footprints.add(Footprint.of(facet))));
  }

  // ---- valleys

  /**
   * A valley's water.
   *
   * @param flowWidthM width of the design rain's flow at its low end, level and square to the line
   * @param cleatLineM what the cleats leave free there
   */
  record Valley(double flowWidthM, double cleatLineM) {
  }

  /**
   * The design rain on everything that falls straight into the valley: the strips of both faces above it. What upper roofs discharge
   * into it comes on top and is not in it.
   *
   * @return null for a line that is level or not straight, where no even flow can be had
   */
  Valley valley(Junction valley) {
    Vec3 along = valley.path().get(valley.path().size() - 1).minus(valley.path().get(0));
    if (valley.path().size() != 2 || valley.faces().size() != 2 || Math.abs(along.z()) < 1e-3 * along.length()) {
      return null;
    }
    double area = 0;
    double cleats = 0;
    double[] z = new double[2];
    for (int i = 0; i < 2; i++) {
      RoofFace face = layout.roofFace(valley.faces().get(i));
      Vec3 normal = face.meanNormal();
      Vec3 d = along.unit();
      Vec3 across = normal.cross(d);
      Vec3 level = Vec3.Z.cross(d).unit();
      double run = Math.abs(across.dot(level));
      double rise = Math.abs(across.dot(d.cross(level)));
      if (rise < 1e-6) {
        return null;
      }
      z[i] = run / rise;
      cleats += system.valley().cleatOffset().value() * run / across.length();
      area += catchment(valley, face);
    }
    double flow = Rain.flow(system.site().runoff().value(), system.site().rainfall().value(), area);
    double line = Math.toDegrees(Math.asin(Math.abs(along.z()) / along.length()));
    return new Valley(Rain.valley(flow, system.manningN(), line, z[0], z[1]).widthM(), cleats);
  }

  /** Plan area of the face straight up the slope from the line. */
  private static double catchment(Junction line, RoofFace face) {
    double area = 0;
    for (Facet facet : face.facets()) {
      Plane plane = facet.plane();
      Vec2 a = new Vec2(plane.u(line.path().get(0)), plane.v(line.path().get(0)));
      Vec2 b = new Vec2(plane.u(line.path().get(1)), plane.v(line.path().get(1)));
      Vec2 left = a.u() <= b.u() ? a : b;
      Vec2 right = a.u() <= b.u() ? b : a;
      if (right.u() - left.u() < 1e-6) {
        continue;
      }
      double m = (right.v() - left.v()) / (right.u() - left.u());
      Region strip = facet.area().cut(1, 0, right.u()).cut(-1, 0, -left.u()).cut(m, -1, m * left.u() - left.v());
      area += strip.area() * Math.abs(plane.normal().z());
    }
    return area;
  }

  // ---- walls

  /** True where an eave of the same face ends at the low end of a wall's line; false for a level line. */
  static boolean eaveAtLowEnd(Junction wall, List<DetailedJunction> junctions) {
    Vec3 first = wall.path().get(0);
    Vec3 last = wall.path().get(wall.path().size() - 1);
    if (Math.abs(first.z() - last.z()) < MEETS) {
      return false;
    }
    Vec3 low = first.z() < last.z() ? first : last;
    return junctions.stream().filter(j -> j.junction().type().water() == Kind.Water.OVER).map(j -> j.junction().junction())
        .filter(j -> j.faces().stream().anyMatch(wall.faces()::contains))
        .anyMatch(j -> low.distance(j.path().get(0)) < MEETS || low.distance(j.path().get(j.path().size() - 1)) < MEETS);
  }

  // ---- drops

  /**
   * Slope of the face that water from this line drops on: the flattest below an eave's ends and middle, the one below a valley's low end;
   * NaN where there is none.
   */
  double dropSlopeDegrees(Junction line, boolean valley) {
    double flattest = Double.NaN;
    for (Vec3 from : valley ? List.of(beyondLowEnd(line)) : beyondEave(line)) {
      double slope = slopeBelow(from);
      flattest = Double.isNaN(flattest) || slope < flattest ? slope : flattest;
    }
    return flattest;
  }

  private static Vec3 beyondLowEnd(Junction line) {
    Vec3 a = line.path().get(0);
    Vec3 b = line.path().get(line.path().size() - 1);
    Vec3 low = a.z() <= b.z() ? a : b;
    Vec3 out = a.z() <= b.z() ? a.minus(b) : b.minus(a);
    return out.planLength() < 1e-9 ? low : low.plus(new Vec3(out.x(), out.y(), 0).unit().times(BEYOND));
  }

  private List<Vec3> beyondEave(Junction line) {
    List<Vec3> points = new ArrayList<>();
    if (line.faces().isEmpty()) {
      return points;
    }
    Vec3 n = layout.roofFace(line.faces().get(0)).meanNormal();
    Vec3 out = n.planLength() < 1e-9 ? Vec3.ZERO : new Vec3(n.x(), n.y(), 0).unit().times(BEYOND);
    Vec3 a = line.path().get(0);
    Vec3 b = line.path().get(line.path().size() - 1);
    for (double t : new double[] {0.05, 0.5, 0.95}) {
      points.add(a.towards(b, t).plus(out));
    }
    return points;
  }

  /** Slope of the highest face below a point, or NaN. */
  private double slopeBelow(Vec3 from) {
    double highest = Double.NEGATIVE_INFINITY;
    double slope = Double.NaN;
    for (Footprint f : footprints) {
      double elevation = f.facet().plane().elevation(from.x(), from.y());
      if (elevation < from.z() - LEAST_DROP && elevation > highest && f.covers(from.x(), from.y())) {
        highest = elevation;
        slope = f.facet().plane().slopeDegrees();
      }
    }
    return slope;
  }
}
