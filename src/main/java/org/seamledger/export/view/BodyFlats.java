package org.seamledger.export.view;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.seamledger.element.Element;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * The surface of an element as flat polygons. What is in a plane of a Boolean result is its section just below the plane less that just
 * above; bodies of very many planes are drawn with their uncut surfaces instead, holes and all.
 */
final class BodyFlats {

  private static final int MOST_PLANES = 120;
  /** Planes that agree to this are one; metres, and parts of a unit normal. */
  private static final double SAME = 1e-4;
  private static final double COINCIDENCE = 1e-4;
  private static final double SMALLEST_M2 = 1e-4;

  private BodyFlats() {
  }

  static void each(Element element, boolean isRoof, Consumer<Flat> into) {
    if (element.openings().isEmpty()) {
      element.body().forEach(part -> each(part, element.globalId(), isRoof, into));
    } else {
      each(element.solid(), element.globalId(), isRoof, into);
    }
  }

  private static void each(Solid solid, String owner, boolean isRoof, Consumer<Flat> into) {
    if (solid instanceof Solid.Union union) {
      union.parts().forEach(part -> each(part, owner, isRoof, into));
      return;
    }
    Map<List<Long>, Plane> planes = new LinkedHashMap<>();
    if (!(solid instanceof Mesh)) {
      solid.eachSurface(s -> planes.putIfAbsent(key(s.plane()), s.plane()));
    }
    if (planes.isEmpty() || planes.size() > MOST_PLANES || !solid.bounds().isBounded()) {
      solid.eachSurface(s -> uncut(s, owner, isRoof, into));
    } else {
      planes.values().forEach(p -> cut(solid, p, owner, isRoof, into));
    }
  }

  private static List<Long> key(Plane p) {
    return List.of(Math.round(p.normal().x() / SAME), Math.round(p.normal().y() / SAME), Math.round(p.normal().z() / SAME),
        Math.round(p.distance() / SAME));
  }

  private static void uncut(Solid.Surface surface, String owner, boolean isRoof, Consumer<Flat> into) {
    if (surface.corners().size() > 2) {
      into.accept(Flat.of(owner, isRoof, surface.plane().normal(), List.of(surface.corners())));
    }
  }

  private static void cut(Solid solid, Plane plane, String owner, boolean isRoof, Consumer<Flat> into) {
    Region window = window(plane, solid.bounds());
    Region below = solid.section(plane, COINCIDENCE, SectionSide.BELOW, window);
    Region bare = below.minus(solid.section(plane, COINCIDENCE, SectionSide.ABOVE, window));
    if (bare.area() > SMALLEST_M2) {
      into.accept(Flat.of(owner, isRoof, plane.normal(), rings(plane, bare)));
    }
  }

  static List<List<Vec3>> rings(Plane plane, Region region) {
    List<List<Vec3>> rings = new ArrayList<>();
    for (Region.Ring ring : region.rings()) {
      rings.add(ring.points().stream().map(p -> plane.at(p.u(), p.v())).toList());
    }
    return rings;
  }

  private static Region window(Plane plane, Box3 box) {
    Box3 b = box.grown(1);
    List<Vec2> corners = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      Vec3 p = new Vec3((i & 1) == 0 ? b.minX() : b.maxX(), (i & 2) == 0 ? b.minY() : b.maxY(), (i & 4) == 0 ? b.minZ() : b.maxZ());
      corners.add(new Vec2(plane.u(p), plane.v(p)));
    }
    return Region.rectangle(corners.stream().mapToDouble(Vec2::u).min().orElseThrow(),
        corners.stream().mapToDouble(Vec2::v).min().orElseThrow(), corners.stream().mapToDouble(Vec2::u).max().orElseThrow(),
        corners.stream().mapToDouble(Vec2::v).max().orElseThrow());
  }
}
