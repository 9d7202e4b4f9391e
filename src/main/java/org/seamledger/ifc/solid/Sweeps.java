package org.seamledger.ifc.solid;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Facets;
import org.seamledger.geometry.PathSweep;
import org.seamledger.geometry.PolygonOutline;
import org.seamledger.geometry.Skin;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.curve.Curve;
import org.seamledger.ifc.curve.Curves;
import org.seamledger.ifc.curve.Offsets;
import org.seamledger.ifc.curve.Surfaces;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.placement.Placements;

/** IfcSweptAreaSolid and IfcSweptDiskSolid with their subtypes. */
final class Sweeps {

  private static final double FULL_TURN = 2 * Math.PI;

  private Sweeps() {
  }

  /**
   * An extrusion of which the mesh is not made yet.
   *
   * @param place from the profile's plane to the building
   * @param along from one end to the other, in the building
   */
  record Prism(List<PolygonOutline> base, Transform place, Vec3 along) {
    Solid solid() {
      return Items.each(base, o -> Skin.prism(o, place, along));
    }
  }

  static Prism prism(Entity e, Transform t) {
    Transform place = t.after(Placements.optionalAxes(e, 1));
    Vec3 direction = Placements.direction(e.entity(2));
    if (Math.abs(direction.z()) < 1e-9) {
      throw EntityProblem.broken(e + ": the direction of extrusion lies in the profile's plane");
    }
    return new Prism(Profiles.outlines(e.entity(0)), place, place.applyDirection(direction.times(e.positiveLength(3))));
  }

  static Solid extruded(Entity e, Transform t) {
    Prism prism = prism(e, t);
    if (e.is("IFCEXTRUDEDAREASOLID")) {
      return prism.solid();
    }
    Transform far = Transform.translation(prism.along()).after(prism.place());
    return tapered(e, prism.base(), Profiles.outlines(e.entity(4)), ends -> Skin.over(
        List.of(Skin.placed(ends.get(0), prism.place()), Skin.placed(ends.get(1), far)), false));
  }

  /** Pairs the outlines of a tapered solid's two profiles. */
  private static Solid tapered(Entity e, List<PolygonOutline> base, List<PolygonOutline> end,
      java.util.function.Function<List<PolygonOutline>, Solid> body) {
    if (base.size() != end.size()) {
      throw EntityProblem.broken(e + ": the two profiles of a tapered solid should have the same parts");
    }
    List<Solid> parts = new ArrayList<>();
    for (int i = 0; i < base.size(); i++) {
      parts.add(body.apply(Tapers.matched(base.get(i), end.get(i))));
    }
    return Items.union(parts);
  }

  static Solid revolved(Entity e, Transform t) {
    Transform place = t.after(Placements.optionalAxes(e, 1));
    Entity axis = e.entity(2);
    Vec3 origin = Placements.point(axis.entity(0));
    Vec3 z = axis.has(1) ? Placements.direction(axis.entity(1)) : Vec3.Z;
    double angle = e.angle(3);
    if (!(Math.abs(angle) > 1e-9)) {
      throw EntityProblem.broken(e + ": the solid is revolved by no angle");
    }
    double turn = Math.copySign(Math.min(Math.abs(angle), FULL_TURN), angle);
    boolean round = FULL_TURN - Math.abs(turn) < 1e-6;
    List<PolygonOutline> base = Profiles.outlines(e.entity(0));
    if (e.is("IFCREVOLVEDAREASOLID")) {
      return Items.each(base, o -> Skin.over(turned(e, List.of(o, o), place, origin, z, turn, round), round));
    }
    return tapered(e, base, Profiles.outlines(e.entity(4)),
        both -> Skin.over(turned(e, both, place, origin, z, turn, false), false));
  }

  private static List<List<List<Vec3>>> turned(Entity e, List<PolygonOutline> ends, Transform place, Vec3 origin, Vec3 z, double turn,
      boolean round) {
    int n = Facets.count(radius(e, ends.get(0), origin, z), turn);
    List<List<List<Vec3>>> sections = new ArrayList<>();
    for (int i = 0; i < (round ? n : n + 1); i++) {
      Transform spin = place.after(rotation(origin, z, turn * i / n));
      sections.add(Skin.placed(Tapers.between(ends.get(0), ends.get(1), (double) i / n), spin));
    }
    return sections;
  }

  /** Greatest distance of the outline from the axis, which must not pass through it. */
  private static double radius(Entity e, PolygonOutline o, Vec3 origin, Vec3 z) {
    Vec3 across = Vec3.Z.cross(z);
    double low = 0;
    double high = 0;
    for (Vec2 p : o.outer()) {
      double d = new Vec3(p.u(), p.v(), 0).minus(origin).dot(across);
      low = Math.min(low, d);
      high = Math.max(high, d);
    }
    if (low < -1e-6 && high > 1e-6) {
      throw EntityProblem.broken(e + ": the axis of revolution passes through the profile");
    }
    if (across.length() < 1e-9) {
      throw EntityProblem.broken(e + ": the axis of revolution should lie in the profile's plane");
    }
    return Math.max(high, -low);
  }

  private static Transform rotation(Vec3 origin, Vec3 z, double angle) {
    Vec3 x = (Math.abs(z.x()) < 0.9 ? Vec3.X : Vec3.Y).cross(z).unit();
    Vec3 y = z.cross(x);
    Transform frame = Transform.axes(origin, x, y, z);
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    return frame.after(new Transform(cos, -sin, 0, 0, sin, cos, 0, 0, 0, 0, 1, 0)).after(frame.inverse());
  }

  static Solid disk(Entity e, Transform t) {
    double r = e.positiveLength(1);
    double inner = e.optionalLength(2, 0);
    if (inner < 0 || inner >= r) {
      throw EntityProblem.broken(e + ": the inner radius should be smaller than the radius");
    }
    List<Vec2> outside = circle(r);
    List<List<Vec2>> hole = inner > 0 ? List.of(circle(inner)) : List.of();
    List<Vec3> line = directrix(e, e.entity(0), 3, 4);
    if (e.is("IFCSWEPTDISKSOLIDPOLYGONAL") && e.has(5)) {
      line = Offsets.rounded(line, e.length(5));
    }
    return along(PolygonOutline.of(outside, hole), line, null, t);
  }

  private static List<Vec2> circle(double r) {
    int n = Facets.aTurn(r);
    List<Vec2> points = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      points.add(new Vec2(r * Math.cos(FULL_TURN * i / n), r * Math.sin(FULL_TURN * i / n)));
    }
    return points;
  }

  /** The directrix between its start and end parameter; parameters that lie outside the curve trim nothing. */
  private static List<Vec3> directrix(Entity e, Entity curve, int startAttribute, int endAttribute) {
    Curve c = Curves.curve(curve);
    double from = parameter(e, startAttribute, c, c.start());
    double to = parameter(e, endAttribute, c, c.end());
    if (Double.isInfinite(from) || Double.isInfinite(to)) {
      throw EntityProblem.broken(e + ": the directrix has no end");
    }
    // Some writers give 0 and 1 for the whole of a curve whose parameter runs further.
    boolean whole = from == 0 && to == 1 && e.has(endAttribute);
    boolean fits = c.periodic() || Double.isInfinite(c.start())
        || from >= c.start() - 1e-9 && to <= c.end() + 1e-9 && from < to && !whole;
    List<Vec3> points = Curves.withoutRepeats(fits ? c.points(from, to) : c.points(c.start(), c.end()));
    if (points.size() < 2) {
      throw EntityProblem.broken(e + ": the directrix has no length");
    }
    return points;
  }

  private static double parameter(Entity e, int attribute, Curve c, double otherwise) {
    if (!e.has(attribute)) {
      return otherwise;
    }
    return c instanceof Curve.Conic ? e.angle(attribute) : e.number(attribute);
  }

  static Solid fixedReference(Entity e, Transform t) {
    Vec3 reference = Placements.direction(e.entity(5));
    return swept(e, t, (p, tangent) -> reference);
  }

  /** The profile's x-axis points along the normal of the reference surface. */
  static Solid onSurface(Entity e, Transform t) {
    return swept(e, t, Surfaces.normals(e.entity(5)));
  }

  private static Solid swept(Entity e, Transform t, PathSweep.Orientation orientation) {
    Transform place = t.after(Placements.optionalAxes(e, 1));
    List<Vec3> line = directrix(e, e.entity(2), 3, 4);
    return along(Profiles.outlines(e.entity(0)), line, orientation, place);
  }

  private static Solid along(List<PolygonOutline> outlines, List<Vec3> line, PathSweep.Orientation orientation, Transform place) {
    boolean closed = Curves.isClosed(line);
    List<Vec3> corners = closed ? line.subList(0, line.size() - 1) : line;
    return Items.each(outlines, o -> Skin.over(PathSweep.sections(o, corners, closed, orientation, place), closed));
  }
}
