package org.seamledger.ifc.placement;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Model;

/** Points, directions, axis placements, object placements and transformation operators as maps of space, in metres. */
public final class Placements {

  /** Directions whose cross product is shorter than this (they are unit vectors) are parallel. */
  private static final double PARALLEL = 1e-9;

  private final Model model;
  private final Map<Long, Transform> known = new HashMap<>();
  private final Map<Long, EntityProblem> failed = new HashMap<>();

  public Placements(Model model) {
    this.model = model;
  }

  public static Vec3 point(Entity e) {
    if (!e.is("IFCCARTESIANPOINT")) {
      throw EntityProblem.unsupported(e + ": only Cartesian points are supported here");
    }
    return vector(e, 1, e.numbers(0), e.metres());
  }

  public static Vec3 direction(Entity e) {
    if (!e.is("IFCDIRECTION")) {
      throw EntityProblem.broken(e + " stands where a direction should");
    }
    Vec3 d = vector(e, 1, e.numbers(0), 1);
    if (!(d.length() > 1e-12)) {
      throw EntityProblem.broken(e + ": a direction of length zero");
    }
    return d.unit();
  }

  public static Vec3 vector(Entity e, int attribute, List<Double> n, double scale) {
    if (n.size() < 2 || n.size() > 3) {
      throw e.mismatch(attribute - 1, "two or three numbers");
    }
    return new Vec3(n.get(0) * scale, n.get(1) * scale, n.size() == 3 ? n.get(2) * scale : 0);
  }

  private static Vec3 optionalDirection(Entity e, int i, Vec3 otherwise) {
    return e.has(i) ? direction(e.entity(i)) : otherwise;
  }

  /** IfcAxis2Placement2D or 3D: from its own coordinates to those it is placed in. */
  public static Transform axes(Entity e) {
    return switch (e.keyword()) {
      case "IFCAXIS2PLACEMENT3D" -> frame(e, point(e.entity(0)), optionalDirection(e, 1, Vec3.Z), optionalDirection(e, 2, null));
      case "IFCAXIS2PLACEMENT2D" -> frame(e, point(e.entity(0)), Vec3.Z, optionalDirection(e, 1, Vec3.X));
      default -> throw EntityProblem.unsupported(e + ": a placement of this kind is not supported");
    };
  }

  public static Transform optionalAxes(Entity e, int i) {
    return e.has(i) ? axes(e.entity(i)) : Transform.IDENTITY;
  }

  /** The right-handed frame with the given z; x is made perpendicular to it, as IfcBuildAxes does. */
  static Transform frame(Entity e, Vec3 origin, Vec3 z, Vec3 reference) {
    Vec3 hint = reference;
    if (hint == null) {
      hint = z.cross(Vec3.X).length() < PARALLEL ? Vec3.Y : Vec3.X;
    }
    Vec3 x = hint.minus(z.times(hint.dot(z)));
    if (x.length() < PARALLEL) {
      throw EntityProblem.broken(e + ": axis and reference direction are parallel");
    }
    Vec3 ux = x.unit();
    return Transform.axes(origin, ux, z.cross(ux), z);
  }

  /**
   * IfcCartesianTransformationOperator of any kind. As IfcBaseAxis does, the first axis is made perpendicular to the third, the second
   * to both; it keeps the side that Axis2 points to, so mirrors stay mirrors.
   */
  public static Transform operator(Entity e) {
    boolean flat = e.keyword().startsWith("IFCCARTESIANTRANSFORMATIONOPERATOR2D");
    if (!flat && !e.keyword().startsWith("IFCCARTESIANTRANSFORMATIONOPERATOR3D")) {
      throw EntityProblem.broken(e + " stands where a transformation operator should");
    }
    Vec3 origin = point(e.entity(2));
    double k1 = scale(e, 3, 1);
    boolean uneven = e.keyword().endsWith("NONUNIFORM");
    double k2 = uneven ? scale(e, flat ? 4 : 5, k1) : k1;
    double k3 = flat ? 1 : uneven ? scale(e, 6, k1) : k1;
    Vec3 z = flat ? Vec3.Z : optionalDirection(e, 4, Vec3.Z);
    Vec3 hintY = optionalDirection(e, 1, flat ? null : Vec3.Y);
    Vec3 x;
    if (flat && !e.has(0) && hintY != null) {
      x = new Vec3(hintY.y(), -hintY.x(), 0);
    } else {
      x = frame(e, origin, z, optionalDirection(e, 0, null)).applyDirection(Vec3.X);
    }
    Vec3 y = z.cross(x);
    if (hintY != null && hintY.dot(y) < 0) {
      y = y.negated();
    }
    return Transform.axes(origin, x.times(k1), y.times(k2), z.times(k3));
  }

  private static double scale(Entity e, int i, double otherwise) {
    double k = e.optionalNumber(i, otherwise);
    if (Math.abs(k) < 1e-12) {
      throw EntityProblem.broken(e + ": a scale of zero");
    }
    return k;
  }

  /**
   * From an object's own coordinates to the world's. Followed upwards one by one, so that neither a long chain nor a circle does harm.
   *
   * @param id of the IfcObjectPlacement, or -1 for none
   */
  public Transform world(long id) {
    List<Long> chain = new ArrayList<>();
    Set<Long> seen = new HashSet<>();
    long here = id;
    while (here >= 0 && !known.containsKey(here)) {
      if (failed.containsKey(here)) {
        throw failed.get(here);
      }
      if (!seen.add(here)) {
        throw fail(chain, circle(chain.subList(chain.indexOf(here), chain.size())));
      }
      chain.add(here);
      try {
        here = parent(model.get(here));
      } catch (EntityProblem p) {
        throw fail(chain, p);
      }
    }
    Transform t = here < 0 ? Transform.IDENTITY : known.get(here);
    for (int i = chain.size() - 1; i >= 0; i--) {
      try {
        t = t.after(axes(model.get(chain.get(i)).entity(1)));
      } catch (EntityProblem p) {
        throw fail(chain.subList(0, i + 1), p);
      }
      known.put(chain.get(i), t);
    }
    return t;
  }

  /** Named is the same one, whichever of them was asked for first. */
  private static EntityProblem circle(List<Long> placements) {
    return EntityProblem.broken("IFCLOCALPLACEMENT #" + Collections.min(placements) + " is placed relative to itself");
  }

  private EntityProblem fail(List<Long> chain, EntityProblem p) {
    chain.forEach(id -> failed.put(id, p));
    return p;
  }

  private static long parent(Entity placement) {
    return switch (placement.keyword()) {
      case "IFCLOCALPLACEMENT" -> placement.optionalReference(0);
      case "IFCGRIDPLACEMENT", "IFCLINEARPLACEMENT" ->
          throw EntityProblem.unsupported(placement + ": elements placed along a grid or an alignment are not supported");
      default -> throw EntityProblem.broken(placement + " stands where an object placement should");
    };
  }
}
