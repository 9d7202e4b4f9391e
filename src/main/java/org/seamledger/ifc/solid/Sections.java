package org.seamledger.ifc.solid;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Facets;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;

/**
 * Rolled and cold-formed sections of IfcParameterizedProfileDef, drawn corner by corner round the centre of their bounding box, with
 * fillets and flange slopes. Positions and meanings of the attributes are those of the schema's own figures.
 */
final class Sections {

  /** A corner and the radius that rounds it off. */
  private record Corner(double x, double y, double radius) {
  }

  private Sections() {
  }

  static List<Vec3> corners(Entity e) {
    List<Corner> corners = switch (e.keyword()) {
      case "IFCRECTANGLEPROFILEDEF" -> box(e.positiveLength(3), e.positiveLength(4), 0);
      case "IFCROUNDEDRECTANGLEPROFILEDEF" -> box(e.positiveLength(3), e.positiveLength(4), e.optionalLength(5, 0));
      case "IFCTRAPEZIUMPROFILEDEF" -> trapezium(e);
      case "IFCISHAPEPROFILEDEF" -> iShape(e);
      case "IFCASYMMETRICISHAPEPROFILEDEF" -> asymmetricI(e);
      case "IFCLSHAPEPROFILEDEF" -> lShape(e);
      case "IFCTSHAPEPROFILEDEF" -> tShape(e);
      case "IFCUSHAPEPROFILEDEF" -> uShape(e);
      case "IFCZSHAPEPROFILEDEF" -> zShape(e);
      case "IFCCSHAPEPROFILEDEF" -> cShape(e);
      default -> throw EntityProblem.unsupported(e + ": a profile of this kind is not supported");
    };
    return rounded(corners);
  }

  static List<Vec3> rectangle(double x, double y, double radius) {
    return rounded(box(x, y, radius));
  }

  private static Corner c(double x, double y) {
    return new Corner(x, y, 0);
  }

  private static Corner c(double x, double y, double radius) {
    return new Corner(x, y, radius);
  }

  private static List<Corner> box(double x, double y, double r) {
    return List.of(c(-x / 2, -y / 2, r), c(x / 2, -y / 2, r), c(x / 2, y / 2, r), c(-x / 2, y / 2, r));
  }

  /** IfcTrapeziumProfileDef: the bottom runs from -BottomXDim/2, the top starts TopXOffset further right. */
  private static List<Corner> trapezium(Entity e) {
    double bottom = e.positiveLength(3);
    double top = e.positiveLength(4);
    double y = e.positiveLength(5) / 2;
    double left = -bottom / 2 + e.length(6);
    return List.of(c(-bottom / 2, -y), c(bottom / 2, -y), c(left + top, y), c(left, y));
  }

  private static List<Corner> iShape(Entity e) {
    double fillet = e.optionalLength(7, 0);
    double edge = e.optionalLength(8, 0);
    double slope = slope(e, 9);
    double width = e.positiveLength(3);
    double thickness = e.positiveLength(6);
    return flanged(e.positiveLength(4), e.positiveLength(5), new Flange(width, thickness, fillet, edge, slope),
        new Flange(width, thickness, fillet, edge, slope));
  }

  private static List<Corner> asymmetricI(Entity e) {
    double bottomThickness = e.positiveLength(6);
    Flange bottom = new Flange(e.positiveLength(3), bottomThickness, e.optionalLength(7, 0), e.optionalLength(11, 0), slope(e, 12));
    Flange top = new Flange(e.positiveLength(8), e.optionalLength(9, bottomThickness), e.optionalLength(10, 0),
        e.optionalLength(13, 0), slope(e, 14));
    return flanged(e.positiveLength(4), e.positiveLength(5), bottom, top);
  }

  private record Flange(double width, double thickness, double fillet, double edge, double slope) {
    /** Thickness at a distance from the web's middle; stated is the one a quarter of the width from it, as for rolled sections. */
    double at(double x) {
      return thickness + Math.tan(slope) * (width / 4 - x);
    }
  }

  private static List<Corner> flanged(double depth, double web, Flange bottom, Flange top) {
    double y = depth / 2;
    double w = web / 2;
    double b = bottom.width / 2;
    double t = top.width / 2;
    return List.of(c(-b, -y), c(b, -y),
        c(b, -y + bottom.at(b), bottom.edge), c(w, -y + bottom.at(w), bottom.fillet),
        c(w, y - top.at(w), top.fillet), c(t, y - top.at(t), top.edge),
        c(t, y), c(-t, y),
        c(-t, y - top.at(t), top.edge), c(-w, y - top.at(w), top.fillet),
        c(-w, -y + bottom.at(w), bottom.fillet), c(-b, -y + bottom.at(b), bottom.edge));
  }

  private static double slope(Entity e, int i) {
    return e.has(i) ? e.angle(i) : 0;
  }

  /** IfcLShapeProfileDef: legs along the left and the bottom; Width is Depth where it is omitted. */
  private static List<Corner> lShape(Entity e) {
    double depth = e.positiveLength(3);
    double width = e.optionalLength(4, depth);
    double t = e.positiveLength(5);
    double fillet = e.optionalLength(6, 0);
    double edge = e.optionalLength(7, 0);
    double tan = Math.tan(slope(e, 8));
    double x = width / 2;
    double y = depth / 2;
    // With sloping legs the stated thickness is the one half-way along each leg.
    double bottomEnd = t - tan * width / 2;
    double leftEnd = t - tan * depth / 2;
    double det = 1 - tan * tan;
    double innerX = (t + tan * depth / 2 - tan * (t + tan * width / 2)) / det;
    double innerY = (t + tan * width / 2 - tan * (t + tan * depth / 2)) / det;
    return List.of(c(-x, -y), c(x, -y), c(x, -y + bottomEnd, edge), c(-x + innerX, -y + innerY, fillet),
        c(-x + leftEnd, y, edge), c(-x, y));
  }

  /** IfcTShapeProfileDef: the flange on top. */
  private static List<Corner> tShape(Entity e) {
    double y = e.positiveLength(3) / 2;
    double x = e.positiveLength(4) / 2;
    double web = e.positiveLength(5);
    double flange = e.positiveLength(6);
    double fillet = e.optionalLength(7, 0);
    double flangeEdge = e.optionalLength(8, 0);
    double webEdge = e.optionalLength(9, 0);
    double tanWeb = Math.tan(slope(e, 10));
    double tanFlange = Math.tan(slope(e, 11));
    // Stated thicknesses hold half-way along the web and along the flange's half.
    double webEnd = web / 2 - tanWeb * y;
    double flangeEnd = flange - tanFlange * x / 2;
    double meetX = (web / 2 + tanWeb * (y - flange - tanFlange * x / 2)) / (1 - tanWeb * tanFlange);
    double meetY = y - flange - tanFlange * (x / 2 - meetX);
    return List.of(c(-webEnd, -y, webEdge), c(webEnd, -y, webEdge), c(meetX, meetY, fillet), c(x, y - flangeEnd, flangeEdge),
        c(x, y), c(-x, y), c(-x, y - flangeEnd, flangeEdge), c(-meetX, meetY, fillet));
  }

  /** IfcUShapeProfileDef: web on the left, open to the right. */
  private static List<Corner> uShape(Entity e) {
    double y = e.positiveLength(3) / 2;
    double width = e.positiveLength(4);
    double x = width / 2;
    double web = e.positiveLength(5);
    double flange = e.positiveLength(6);
    double fillet = e.optionalLength(7, 0);
    double edge = e.optionalLength(8, 0);
    double tan = Math.tan(slope(e, 9));
    double end = flange - tan * width / 2;
    double root = flange + tan * (width / 2 - web);
    return List.of(c(-x, -y), c(x, -y), c(x, -y + end, edge), c(-x + web, -y + root, fillet),
        c(-x + web, y - root, fillet), c(x, y - end, edge), c(x, y), c(-x, y));
  }

  /** IfcZShapeProfileDef: the lower flange to the right, the upper one to the left; the web in the middle. */
  private static List<Corner> zShape(Entity e) {
    double y = e.positiveLength(3) / 2;
    double flangeWidth = e.positiveLength(4);
    double web = e.positiveLength(5);
    double t = e.positiveLength(6);
    double fillet = e.optionalLength(7, 0);
    double edge = e.optionalLength(8, 0);
    double w = web / 2;
    double x = flangeWidth - w;
    return List.of(c(-w, -y), c(x, -y), c(x, -y + t, edge), c(w, -y + t, fillet), c(w, y), c(-x, y), c(-x, y - t, edge),
        c(-w, y - t, fillet));
  }

  /** IfcCShapeProfileDef: web on the left, lips (Girth long) at the flanges' ends. */
  private static List<Corner> cShape(Entity e) {
    double y = e.positiveLength(3) / 2;
    double x = e.positiveLength(4) / 2;
    double t = e.positiveLength(5);
    double girth = e.positiveLength(6);
    double inner = e.optionalLength(7, 0);
    double outer = inner > 0 ? inner + t : 0;
    return List.of(c(-x, -y, outer), c(x, -y, outer), c(x, -y + girth), c(x - t, -y + girth), c(x - t, -y + t, inner),
        c(-x + t, -y + t, inner), c(-x + t, y - t, inner), c(x - t, y - t, inner), c(x - t, y - girth), c(x, y - girth),
        c(x, y, outer), c(-x, y, outer));
  }

  private static List<Vec3> rounded(List<Corner> corners) {
    List<Vec3> points = new ArrayList<>();
    int n = corners.size();
    for (int i = 0; i < n; i++) {
      addCorner(points, at(corners.get((i + n - 1) % n)), at(corners.get(i)), at(corners.get((i + 1) % n)), corners.get(i).radius);
    }
    return points;
  }

  private static Vec3 at(Corner c) {
    return new Vec3(c.x, c.y, 0);
  }

  /** The corner itself, or the arc of the given radius that touches both of its edges. */
  private static void addCorner(List<Vec3> points, Vec3 before, Vec3 corner, Vec3 after, double radius) {
    Vec3 a = before.minus(corner);
    Vec3 b = after.minus(corner);
    if (!(radius > 0) || a.length() < 1e-9 || b.length() < 1e-9) {
      points.add(corner);
      return;
    }
    Vec3 ua = a.unit();
    Vec3 ub = b.unit();
    double half = Math.acos(Math.min(1, Math.max(-1, ua.dot(ub)))) / 2;
    if (half < 1e-6 || half > Math.PI / 2 - 1e-6) {
      points.add(corner);
      return;
    }
    double tangent = Math.min(radius / Math.tan(half), Math.min(a.length(), b.length()));
    double r = tangent * Math.tan(half);
    Vec3 centre = corner.plus(ua.plus(ub).unit().times(r / Math.sin(half)));
    Vec3 from = corner.plus(ua.times(tangent)).minus(centre);
    double turn = Math.PI - 2 * half;
    double sign = from.cross(corner.plus(ub.times(tangent)).minus(centre)).z() > 0 ? 1 : -1;
    int steps = Facets.count(r, turn);
    for (int k = 0; k <= steps; k++) {
      double angle = sign * turn * k / steps;
      double cos = Math.cos(angle);
      double sin = Math.sin(angle);
      points.add(centre.plus(new Vec3(from.x() * cos - from.y() * sin, from.x() * sin + from.y() * cos, 0)));
    }
  }
}
