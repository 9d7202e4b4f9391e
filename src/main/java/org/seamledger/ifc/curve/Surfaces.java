package org.seamledger.ifc.curve;

import org.seamledger.geometry.PathSweep;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.placement.Placements;

/** IfcSurface and its subtypes. */
public final class Surfaces {

  private static final double STEP = 1e-5;

  private Surfaces() {
  }

  /** A surface that is not flat. */
  public static Surface curved(Entity e) {
    return switch (e.keyword()) {
      case "IFCCYLINDRICALSURFACE" -> new Surface.Cylinder(Placements.axes(e.entity(0)), e.positiveLength(1));
      case "IFCSPHERICALSURFACE" -> new Surface.Sphere(Placements.axes(e.entity(0)), e.positiveLength(1));
      case "IFCTOROIDALSURFACE" -> new Surface.Torus(Placements.axes(e.entity(0)), e.positiveLength(1), e.positiveLength(2));
      case "IFCSURFACEOFLINEAREXTRUSION" -> extruded(e);
      case "IFCSURFACEOFREVOLUTION" -> revolved(e);
      case "IFCBSPLINESURFACEWITHKNOTS", "IFCRATIONALBSPLINESURFACEWITHKNOTS" -> SplineSurface.of(e);
      case "IFCRECTANGULARTRIMMEDSURFACE", "IFCCURVEBOUNDEDSURFACE" -> curved(e.entity(0));
      default -> throw EntityProblem.unsupported(e + ": a surface of this kind is not supported");
    };
  }

  private static Surface extruded(Entity e) {
    Transform place = Placements.optionalAxes(e, 1);
    Vec3 direction = Placements.direction(e.entity(2));
    if (Math.abs(direction.z()) < 1e-9) {
      throw EntityProblem.broken(e + ": the direction of extrusion lies in the curve's plane");
    }
    return new Surface.Extruded(place, place.inverse(), profileCurve(e), direction);
  }

  private static Surface revolved(Entity e) {
    Transform place = Placements.optionalAxes(e, 1);
    Entity axis = e.entity(2);
    Vec3 z = axis.has(1) ? Placements.direction(axis.entity(1)) : Vec3.Z;
    return new Surface.Revolved(place, place.inverse(), profileCurve(e), Placements.point(axis.entity(0)), z);
  }

  /** The curve of the profile that is swept: open or closed, by itself. */
  private static Curve profileCurve(Entity e) {
    Entity profile = e.entity(0);
    return switch (profile.keyword()) {
      case "IFCARBITRARYOPENPROFILEDEF", "IFCARBITRARYCLOSEDPROFILEDEF", "IFCCENTERLINEPROFILEDEF" -> Curves.curve(profile.entity(2));
      default -> throw EntityProblem.unsupported(profile + ": a surface swept from a profile of this kind is not supported");
    };
  }

  /** The surface's normal at points on it. */
  public static PathSweep.Orientation normals(Entity e) {
    if (e.is("IFCPLANE")) {
      Vec3 normal = Placements.axes(e.entity(0)).applyDirection(Vec3.Z);
      return (p, tangent) -> normal;
    }
    Surface s = curved(e);
    return (p, tangent) -> {
      Vec2 at = s.parameters(p, null);
      Vec3 su = s.at(at.u() + STEP, at.v()).minus(s.at(at.u() - STEP, at.v()));
      Vec3 sv = s.at(at.u(), at.v() + STEP).minus(s.at(at.u(), at.v() - STEP));
      return su.cross(sv).unit();
    };
  }
}
