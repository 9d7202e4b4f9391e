package org.seamledger.samples;

import static org.seamledger.samples.StepText.ratio;
import static org.seamledger.samples.StepText.word;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.samples.StepText.Ref;

/** Writes swept and clipped solids, and the points, directions and placements that all representations use. */
final class BodyWriter {

  private final StepText step;
  private final Form form;

  BodyWriter(StepText step, Form form) {
    this.step = step;
    this.form = form;
  }

  // ---- points and placements ----

  StepText.Number length(double metres) {
    return new StepText.Number(metres / form.unit().metres, form.unit().decimals);
  }

  List<StepText.Number> lengths(Vec3 p) {
    return List.of(length(p.x()), length(p.y()), length(p.z()));
  }

  Ref point(Vec3 p) {
    return step.share("IFCCARTESIANPOINT", lengths(p));
  }

  Ref point(Vec2 p) {
    return step.share("IFCCARTESIANPOINT", List.of(length(p.u()), length(p.v())));
  }

  Ref direction(Vec3 d) {
    Vec3 u = d.unit();
    return step.share("IFCDIRECTION", List.of(ratio(u.x()), ratio(u.y()), ratio(u.z())));
  }

  Ref frame(Vec3 origin, Vec3 z, Vec3 x) {
    return step.share("IFCAXIS2PLACEMENT3D", point(origin), direction(z), direction(x));
  }

  Ref frame(Vec3 origin) {
    return step.share("IFCAXIS2PLACEMENT3D", point(origin), null, null);
  }

  Ref plane(Vec3 origin, Vec3 normal) {
    return step.add("IFCPLANE", frame(origin, normal, inPlane(normal)));
  }

  private static Vec3 inPlane(Vec3 normal) {
    Vec3 level = Vec3.Z.cross(normal);
    return level.length() > 1e-6 * normal.length() ? level : Vec3.X;
  }

  // ---- swept solids ----

  Ref swept(Body body) {
    return body instanceof Cylinder c ? swept(c) : swept((Extrusion) body);
  }

  private Ref swept(Cylinder c) {
    Ref centre = step.share("IFCAXIS2PLACEMENT2D", point(new Vec2(0, 0)), null);
    Ref circle = step.add("IFCCIRCLEPROFILEDEF", word("AREA"), null, centre, length(c.radius()));
    return step.add("IFCEXTRUDEDAREASOLID", circle, frame(c.base(), c.axis(), c.across()), direction(Vec3.Z), length(c.axis().length()));
  }

  /** The far end of the sweep is the profile, so that a roof slab is drawn at its underside and grows upward. */
  private Ref swept(Extrusion e) {
    List<Vec3> ring = e.ring().stream().map(p -> p.plus(e.sweep())).toList();
    Vec3 origin = ring.get(0);
    Vec3 z = e.normal();
    Vec3 x = ring.get(1).minus(origin).unit();
    Vec3 y = z.cross(x);
    Vec3 back = e.sweep().negated();
    Vec3 along = new Vec3(back.dot(x), back.dot(y), back.dot(z));
    List<List<Vec2>> holes = e.holeRings().stream()
        .map(h -> h.stream().map(p -> flat(p.plus(e.sweep()), origin, x, y)).toList()).toList();
    Ref profile = profile(ring.stream().map(p -> flat(p, origin, x, y)).toList(), holes);
    return step.add("IFCEXTRUDEDAREASOLID", profile, frame(origin, z, x), direction(along), length(along.length()));
  }

  private static Vec2 flat(Vec3 p, Vec3 origin, Vec3 x, Vec3 y) {
    Vec3 d = p.minus(origin);
    return new Vec2(d.dot(x), d.dot(y));
  }

  private Ref profile(List<Vec2> ring, List<List<Vec2>> holes) {
    if (holes.isEmpty()) {
      return isRectangle(ring) ? rectangle(ring) : step.add("IFCARBITRARYCLOSEDPROFILEDEF", word("AREA"), null, closed(ring));
    }
    return step.add("IFCARBITRARYPROFILEDEFWITHVOIDS", word("AREA"), null, closed(ring), holes.stream().map(this::closed).toList());
  }

  private static boolean isRectangle(List<Vec2> r) {
    return r.size() == 4 && r.get(0).plus(r.get(2)).distance(r.get(1).plus(r.get(3))) < 1e-9
        && Math.abs(r.get(1).minus(r.get(0)).dot(r.get(2).minus(r.get(1)))) < 1e-9;
  }

  /** The ring's first edge lies along the profile's first axis. */
  private Ref rectangle(List<Vec2> r) {
    Ref centre = step.add("IFCAXIS2PLACEMENT2D", point(r.get(0).towards(r.get(2), 0.5)), null);
    return step.add("IFCRECTANGLEPROFILEDEF", word("AREA"), null, centre, length(r.get(0).distance(r.get(1))),
        length(r.get(1).distance(r.get(2))));
  }

  private Ref closed(List<Vec2> ring) {
    if (form.schema() == Form.Schema.IFC4X3) {
      return indexed(ring);
    }
    List<Ref> points = new ArrayList<>(ring.stream().map(this::point).toList());
    points.add(points.get(0));
    return step.add("IFCPOLYLINE", points);
  }

  private Ref indexed(List<Vec2> ring) {
    Ref points = step.add("IFCCARTESIANPOINTLIST2D", ring.stream().map(p -> List.of(length(p.u()), length(p.v()))).toList(), null);
    List<Integer> all = new ArrayList<>();
    for (int i = 1; i <= ring.size(); i++) {
      all.add(i);
    }
    all.add(1);
    return step.add("IFCINDEXEDPOLYCURVE", points, List.of(new StepText.Typed("IFCLINEINDEX", all)), false);
  }

  // ---- clipped solids ----

  /** A body with upright sides and sloping ends as an upright prism, cut by the planes of its ends. */
  Ref clipped(Extrusion e) {
    double low = lowest(e) - 1;
    double high = highest(e) + 1;
    return clipEnds(swept(new Extrusion(level(e.ring(), high), e.holeRings().stream().map(h -> level(h, high)).toList(),
        new Vec3(0, 0, low - high))), e, false);
  }

  /** The same, the upper end cut by a half-space with a rectangular boundary round the body. */
  Ref boundedClipped(Extrusion e) {
    double low = lowest(e) - 1;
    double high = highest(e) + 1;
    return clipEnds(swept(new Extrusion(level(e.ring(), high), e.holeRings().stream().map(h -> level(h, high)).toList(),
        new Vec3(0, 0, low - high))), e, true);
  }

  /** A box, cut by a plane for every side and by the planes of the ends. */
  Ref boxClipped(Extrusion e) {
    if (!isConvex(e.ring()) || !e.holes().isEmpty()) {
      return clipped(e);
    }
    double high = highest(e) + 1;
    Ref solid = swept(new Extrusion(level(around(e), high), List.of(), new Vec3(0, 0, lowest(e) - 1 - high)));
    List<Vec3> ring = e.ring();
    for (int i = 0; i < ring.size(); i++) {
      Vec3 a = ring.get(i);
      Vec3 edge = ring.get((i + 1) % ring.size()).minus(a);
      solid = clip(solid, step.add("IFCHALFSPACESOLID", plane(a, new Vec3(edge.y(), -edge.x(), 0)), false));
    }
    return clipEnds(solid, e, false);
  }

  private Ref clipEnds(Ref solid, Extrusion e, boolean bounded) {
    Vec3 up = e.normal().z() > 0 ? e.normal() : e.normal().negated();
    boolean downward = e.sweep().z() < 0;
    Vec3 top = downward ? e.anchor() : e.anchor().plus(e.sweep());
    Vec3 bottom = downward ? e.anchor().plus(e.sweep()) : e.anchor();
    // The flag says that the normal points away from the material: above the top plane it points into it.
    Ref above = bounded ? boundedHalfSpace(plane(top, up), e) : step.add("IFCHALFSPACESOLID", plane(top, up), false);
    Ref below = step.add("IFCHALFSPACESOLID", plane(bottom, up), true);
    return clip(clip(solid, above), below);
  }

  private Ref boundedHalfSpace(Ref plane, Extrusion e) {
    List<Vec3> box = around(e);
    Vec3 origin = box.get(0);
    List<Vec2> boundary = box.stream().map(p -> new Vec2(p.x() - origin.x(), p.y() - origin.y())).toList();
    return step.add("IFCPOLYGONALBOUNDEDHALFSPACE", plane, false, frame(origin, Vec3.Z, Vec3.X), closed(boundary));
  }

  private Ref clip(Ref solid, Ref tool) {
    return step.add("IFCBOOLEANCLIPPINGRESULT", word("DIFFERENCE"), solid, tool);
  }

  private static List<Vec3> level(List<Vec3> ring, double z) {
    return ring.stream().map(p -> new Vec3(p.x(), p.y(), z)).toList();
  }

  private static List<Vec3> around(Extrusion e) {
    double x0 = e.outline().stream().mapToDouble(Vec3::x).min().orElseThrow() - 0.5;
    double x1 = e.outline().stream().mapToDouble(Vec3::x).max().orElseThrow() + 0.5;
    double y0 = e.outline().stream().mapToDouble(Vec3::y).min().orElseThrow() - 0.5;
    double y1 = e.outline().stream().mapToDouble(Vec3::y).max().orElseThrow() + 0.5;
    return List.of(new Vec3(x0, y0, 0), new Vec3(x1, y0, 0), new Vec3(x1, y1, 0), new Vec3(x0, y1, 0));
  }

  private static double lowest(Extrusion e) {
    return e.outline().stream().mapToDouble(Vec3::z).min().orElseThrow() + Math.min(0, e.sweep().z());
  }

  private static double highest(Extrusion e) {
    return e.outline().stream().mapToDouble(Vec3::z).max().orElseThrow() + Math.max(0, e.sweep().z());
  }

  private static boolean isConvex(List<Vec3> ring) {
    int n = ring.size();
    for (int i = 0; i < n; i++) {
      Vec3 a = ring.get(i);
      Vec3 b = ring.get((i + 1) % n);
      Vec3 c = ring.get((i + 2) % n);
      if ((b.x() - a.x()) * (c.y() - b.y()) - (b.y() - a.y()) * (c.x() - b.x()) < -1e-12) {
        return false;
      }
    }
    return true;
  }
}
