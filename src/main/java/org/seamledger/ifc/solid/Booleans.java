package org.seamledger.ifc.solid;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.HalfSpace;
import org.seamledger.geometry.PolygonOutline;
import org.seamledger.geometry.Skin;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.curve.Curves;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.placement.Placements;

/**
 * IfcBooleanResult and the half-spaces that clip.
 *
 * <p>Authoring tools write thousands of clippings as a chain of first operands. The chain is followed downwards in a loop, and
 * neighbouring operations of one kind become one: a − b − c is a − (b ∪ c).
 */
final class Booleans {

  /** Half-spaces are cut this far (metres) from their place where nothing else bounds them. */
  private static final double FAR = 10_000;

  private record Step(String operator, Entity tool) {
  }

  private Booleans() {
  }

  static Solid result(Entity e, Transform t, int depth) {
    List<Step> steps = new ArrayList<>();
    Set<Long> seen = new HashSet<>();
    Entity here = e;
    while (here.is("IFCBOOLEANRESULT") || here.is("IFCBOOLEANCLIPPINGRESULT")) {
      if (!seen.add(here.id())) {
        throw EntityProblem.broken(here + ": a Boolean result that is its own operand");
      }
      steps.add(new Step(operator(here), here.entity(2)));
      here = here.entity(1);
    }
    Collections.reverse(steps);
    Solid body = operand(here, t, depth + 1, Box3.EVERYWHERE);
    int i = 0;
    while (i < steps.size()) {
      String operator = steps.get(i).operator();
      // The same half-space may clip a body again and again.
      Set<Solid> tools = new LinkedHashSet<>();
      while (i < steps.size() && steps.get(i).operator().equals(operator)) {
        tools.add(operand(steps.get(i).tool(), t, depth + 1, body.bounds()));
        i++;
      }
      body = combined(body, operator, List.copyOf(tools));
    }
    return body;
  }

  /** The first of all operands where every step takes something away from it, or null. */
  static Entity body(Entity e) {
    Set<Long> seen = new HashSet<>();
    Entity here = e;
    while (here.is("IFCBOOLEANRESULT") || here.is("IFCBOOLEANCLIPPINGRESULT")) {
      if (!seen.add(here.id()) || !operator(here).equals("DIFFERENCE")) {
        return null;
      }
      here = here.entity(1);
    }
    return here;
  }

  private static String operator(Entity e) {
    String operator = e.word(0);
    // A clipping result is a difference, whatever is written.
    if (e.is("IFCBOOLEANCLIPPINGRESULT")) {
      return "DIFFERENCE";
    }
    if (!operator.equals("DIFFERENCE") && !operator.equals("UNION") && !operator.equals("INTERSECTION")) {
      throw e.mismatch(0, "UNION, INTERSECTION or DIFFERENCE");
    }
    return operator;
  }

  private static Solid combined(Solid body, String operator, List<Solid> tools) {
    return switch (operator) {
      case "DIFFERENCE" -> new Solid.Difference(body, Items.union(tools));
      case "UNION" -> {
        List<Solid> all = new ArrayList<>(List.of(body));
        all.addAll(tools);
        yield new Solid.Union(all);
      }
      default -> {
        Solid common = tools.get(0);
        for (Solid next : tools.subList(1, tools.size())) {
          common = new Solid.Intersection(common, next);
        }
        yield new Solid.Intersection(body, common);
      }
    };
  }

  /** @param reach what the operand is applied to: a bounded half-space need not go further */
  private static Solid operand(Entity e, Transform t, int depth, Box3 reach) {
    return switch (e.keyword()) {
      case "IFCHALFSPACESOLID", "IFCBOXEDHALFSPACE" -> halfSpace(e, t);
      case "IFCPOLYGONALBOUNDEDHALFSPACE" -> new Solid.Intersection(prism(e, t, reach), halfSpace(e, t));
      default -> Items.solid(e, t, depth);
    };
  }

  /**
   * AgreementFlag is true where the surface's normal points away from the material. A boxed half-space's enclosure only says where the
   * half-space matters, and takes nothing away from it.
   */
  private static HalfSpace halfSpace(Entity e, Transform t) {
    Entity surface = e.entity(0);
    if (!surface.is("IFCPLANE")) {
      throw EntityProblem.unsupported(e + ": a half-space behind " + surface + " is not supported, only behind a plane");
    }
    Transform place = Placements.axes(surface.entity(0));
    Vec3 normal = place.applyDirection(Vec3.Z);
    HalfSpace half = new HalfSpace(place.apply(Vec3.ZERO), e.flag(1, true) ? normal : normal.negated());
    return (HalfSpace) half.transformed(t);
  }

  /** The boundary's prism, both ways from its plane as far as the body reaches. */
  private static Solid prism(Entity e, Transform t, Box3 reach) {
    Transform place = t.after(Placements.axes(e.entity(2)));
    List<Vec3> points = Curves.points(e.entity(3));
    List<Vec2> ring = points.stream().map(p -> new Vec2(p.x(), p.y())).toList();
    Vec3 axis = place.applyDirection(Vec3.Z);
    double far = reach.isBounded() && !reach.isEmpty()
        ? reach.centre().distance(place.apply(Vec3.ZERO)) + reach.diagonal() + 1 : FAR;
    Transform low = Transform.translation(axis.unit().times(-far)).after(place);
    List<PolygonOutline> outlines;
    try {
      outlines = PolygonOutline.of(ring, List.of());
    } catch (IllegalArgumentException x) {
      throw EntityProblem.broken(e + ": " + x.getMessage());
    }
    return Items.each(outlines, o -> Skin.prism(o, low, axis.unit().times(2 * far)));
  }
}
