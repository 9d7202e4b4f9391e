package org.seamledger.ifc;

import org.seamledger.geometry.PathSweep;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/** IfcSurface and its subtypes. */
final class Surfaces {

  private Surfaces() {
  }

  /** The surface's normal at points on it. */
  static PathSweep.Orientation normals(Entity e) {
    return switch (e.keyword()) {
      case "IFCPLANE" -> {
        Vec3 normal = Placements.axes(e.entity(0)).applyDirection(Vec3.Z);
        yield (p, tangent) -> normal;
      }
      case "IFCSURFACEOFLINEAREXTRUSION" -> {
        Transform place = Placements.optionalAxes(e, 1);
        Vec3 direction = place.applyDirection(Placements.direction(e.entity(2)));
        // The normal is across both the extruded curve, along which the directrix runs, and the extrusion.
        yield (p, tangent) -> tangent.cross(direction);
      }
      case "IFCCYLINDRICALSURFACE" -> {
        Transform place = Placements.axes(e.entity(0));
        Transform back = place.inverse();
        yield (p, tangent) -> {
          Vec3 q = back.apply(p);
          return place.applyDirection(new Vec3(q.x(), q.y(), 0));
        };
      }
      default -> throw Problem.unsupported(e + ": sweeping along a surface of this kind is not supported");
    };
  }
}
