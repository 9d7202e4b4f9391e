package org.seamledger.ifc.solid;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.seamledger.geometry.Facets;
import org.seamledger.geometry.PolygonOutline;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.curve.Curves;
import org.seamledger.ifc.curve.Offsets;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.placement.Placements;

/** IfcProfileDef and its subtypes as outlines in the profile's plane, metres. */
final class Profiles {

  private static final int DEEPEST = 30;

  private Profiles() {
  }

  /** The outlines of a profile: one, or several for composite profiles. */
  static List<PolygonOutline> outlines(Entity e) {
    return outlines(e, Transform.IDENTITY, 0);
  }

  private static List<PolygonOutline> outlines(Entity e, Transform t, int depth) {
    if (depth > DEEPEST) {
      throw EntityProblem.broken(e + ": profiles are nested too deeply");
    }
    return switch (e.keyword()) {
      case "IFCARBITRARYCLOSEDPROFILEDEF" -> one(e, t, closed(e.entity(2)), List.of());
      case "IFCARBITRARYPROFILEDEFWITHVOIDS" ->
          one(e, t, closed(e.entity(2)), e.members(3).stream().map(Profiles::closed).toList());
      case "IFCCENTERLINEPROFILEDEF" -> centreLine(e, t);
      case "IFCDERIVEDPROFILEDEF" -> outlines(e.entity(2), t.after(Placements.operator(e.entity(3))), depth + 1);
      // The operator of a mirrored profile is derived: x changes its sign.
      case "IFCMIRROREDPROFILEDEF" ->
          outlines(e.entity(2), t.after(new Transform(-1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0)), depth + 1);
      case "IFCCOMPOSITEPROFILEDEF" -> {
        List<PolygonOutline> all = new ArrayList<>();
        e.members(2).forEach(p -> all.addAll(outlines(p, t, depth + 1)));
        yield all;
      }
      default -> parameterized(e, t);
    };
  }

  private static List<PolygonOutline> parameterized(Entity e, Transform outside) {
    Transform t = e.has(2) ? outside.after(Placements.axes(e.entity(2))) : outside;
    return switch (e.keyword()) {
      case "IFCCIRCLEPROFILEDEF" -> one(e, t, ellipse(e.positiveLength(3), e.positiveLength(3)), List.of());
      case "IFCELLIPSEPROFILEDEF" -> one(e, t, ellipse(e.positiveLength(3), e.positiveLength(4)), List.of());
      case "IFCCIRCLEHOLLOWPROFILEDEF" -> {
        double r = e.positiveLength(3);
        double inner = r - e.positiveLength(4);
        yield one(e, t, ellipse(r, r), inner > 0 ? List.of(ellipse(inner, inner)) : List.of());
      }
      case "IFCRECTANGLEHOLLOWPROFILEDEF" -> hollowRectangle(e, t);
      default -> one(e, t, Sections.corners(e), List.of());
    };
  }

  private static List<PolygonOutline> hollowRectangle(Entity e, Transform t) {
    double x = e.positiveLength(3);
    double y = e.positiveLength(4);
    double wall = e.positiveLength(5);
    List<Vec3> outer = Sections.rectangle(x, y, e.optionalLength(7, 0));
    boolean open = 2 * wall < Math.min(x, y);
    return one(e, t, outer, open ? List.of(Sections.rectangle(x - 2 * wall, y - 2 * wall, e.optionalLength(6, 0))) : List.of());
  }

  private static List<Vec3> ellipse(double a, double b) {
    int n = Facets.aTurn(Math.max(a, b));
    List<Vec3> points = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      double angle = 2 * Math.PI * i / n;
      points.add(new Vec3(a * Math.cos(angle), b * Math.sin(angle), 0));
    }
    return points;
  }

  private static List<Vec3> closed(Entity curve) {
    return Curves.points(curve);
  }

  private static List<PolygonOutline> centreLine(Entity e, Transform t) {
    List<Vec3> line = Curves.points(e.entity(2));
    if (line.size() < 2) {
      throw EntityProblem.broken(e + ": the centre line has no length");
    }
    double half = e.positiveLength(3) / 2;
    List<Vec3> left = Offsets.beside(line, half);
    List<Vec3> right = Offsets.beside(line, -half);
    if (Curves.isClosed(line)) {
      boolean leftIsOuter = Math.abs(area(left)) > Math.abs(area(right));
      return one(e, t, leftIsOuter ? left : right, List.of(leftIsOuter ? right : left));
    }
    List<Vec3> round = new ArrayList<>(left);
    Collections.reverse(right);
    round.addAll(right);
    return one(e, t, round, List.of());
  }

  private static double area(List<Vec3> ring) {
    double twice = 0;
    for (int i = 0; i + 1 < ring.size(); i++) {
      twice += ring.get(i).x() * ring.get(i + 1).y() - ring.get(i + 1).x() * ring.get(i).y();
    }
    return twice / 2;
  }

  private static List<PolygonOutline> one(Entity e, Transform t, List<Vec3> outer, List<List<Vec3>> holes) {
    try {
      return PolygonOutline.of(flat(outer, t), holes.stream().map(h -> flat(h, t)).toList());
    } catch (IllegalArgumentException x) {
      throw EntityProblem.broken(e + ": " + x.getMessage());
    }
  }

  private static List<Vec2> flat(List<Vec3> ring, Transform t) {
    return ring.stream().map(t::apply).map(p -> new Vec2(p.x(), p.y())).toList();
  }
}
