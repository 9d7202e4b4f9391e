package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * The surface of a solid as plane polygons, for pictures: nothing may be measured from it. A plane carries surface of a Boolean result
 * where the section just on one side of it is filled and the section on the other is not, so everything that is taken away is taken away:
 * half-spaces, bounded or not, and bodies such as openings, with the faces of the cut.
 */
public final class ClippedSurfaces {

  /** What lies within this distance of a plane, metres, lies in it. */
  private static final double COINCIDENCE = 1e-4;
  /** Normals and distances that agree in five decimals are of one plane; where rounding parts them, its surface comes in two parts. */
  private static final double SAME = 1e5;

  /** Surface in a plane. @param region all of it where null @param material on which side of the plane the material lies */
  private record Sheet(Plane plane, Region region, SectionSide material) {
  }

  private ClippedSurfaces() {
  }

  /** Corners of each polygon in order, metres, in the coordinates of the solid: convex, counter-clockwise seen from outside. */
  public static List<List<Vec3>> of(Solid solid) {
    if (solid instanceof Solid.Union union) {
      return union.parts().stream().flatMap(p -> of(p).stream()).toList();
    }
    if (solid instanceof Mesh) {
      List<List<Vec3>> triangles = new ArrayList<>();
      solid.eachSurface(s -> triangles.add(s.corners()));
      return triangles;
    }
    return sheets(solid).stream().filter(s -> s.region() != null).flatMap(s -> triangles(s)).toList();
  }

  private static List<Sheet> sheets(Solid solid) {
    if (solid instanceof HalfSpace half) {
      return List.of(new Sheet(Plane.through(half.point(), half.outward()), null, SectionSide.BELOW));
    }
    if (solid instanceof Solid.Union union) {
      return union.parts().stream().flatMap(p -> sheets(p).stream()).toList();
    }
    if (solid instanceof Solid.Difference difference) {
      return without(difference.body(), difference.tool() instanceof Solid.Union u ? u.parts() : List.of(difference.tool()));
    }
    if (solid instanceof Solid.Intersection both) {
      Stream<Sheet> first = sheets(both.first()).stream().map(s -> common(s, both.second(), s.material()));
      Stream<Sheet> second = sheets(both.second()).stream().map(s -> within(s, both.first(), s.material()));
      return Stream.concat(first, second).filter(Objects::nonNull).toList();
    }
    return faces(solid);
  }

  /** A mesh's triangles, those of one plane together. */
  private static List<Sheet> faces(Solid mesh) {
    Map<List<Long>, List<Solid.Surface>> byPlane = new LinkedHashMap<>();
    mesh.eachSurface(s -> {
      Vec3 n = s.plane().normal();
      List<Long> key = Stream.of(n.x(), n.y(), n.z(), s.plane().distance()).map(x -> Math.round(x * SAME)).toList();
      byPlane.computeIfAbsent(key, k -> new ArrayList<>()).add(s);
    });
    List<Sheet> sheets = new ArrayList<>();
    for (List<Solid.Surface> together : byPlane.values()) {
      Plane plane = together.get(0).plane();
      sheets.add(new Sheet(plane, Region.unionOf(together.stream().map(s -> polygon(plane, s.corners())).toList()), SectionSide.BELOW));
    }
    return sheets;
  }

  private static Region polygon(Plane plane, List<Vec3> corners) {
    return Region.polygon(corners.stream().map(p -> new Vec2(plane.u(p), plane.v(p))).toList());
  }

  /** One tool after the other: what is left of the surface, and of the tool's surface what lies in what is left of the body. */
  private static List<Sheet> without(Solid body, List<Solid> tools) {
    List<Sheet> left = sheets(body);
    List<Solid> taken = new ArrayList<>();
    for (Solid tool : tools) {
      Box3 reach = tool.bounds().grown(COINCIDENCE);
      if (!reach.overlaps(body.bounds())) {
        continue;
      }
      List<Sheet> next = new ArrayList<>();
      for (Sheet s : left) {
        next.add(s.region() == null || !reach.overlaps(box(s)) ? s : new Sheet(s.plane(),
            s.region().minus(tool.section(s.plane(), COINCIDENCE, s.material(), s.region())), s.material()));
      }
      Solid rest = taken.isEmpty() ? body : new Solid.Difference(body, new Solid.Union(taken.stream()
          .filter(t -> t.bounds().overlaps(reach)).toList()));
      sheets(tool).stream().map(s -> within(s, rest, other(s.material()))).filter(Objects::nonNull).forEach(next::add);
      left = next.stream().filter(s -> s.region() == null || !s.region().isEmpty()).toList();
      taken.add(tool);
    }
    return left;
  }

  /** The same where the body is on both sides: where it ends in that plane its own surface is there already. */
  private static Sheet within(Sheet s, Solid body, SectionSide side) {
    Sheet beyond = common(s, body, other(side));
    return beyond == null ? null : common(new Sheet(s.plane(), beyond.region(), s.material()), body, side);
  }

  /** What of a sheet lies in a body on a side of it, with the material there; null where nothing does. */
  private static Sheet common(Sheet s, Solid body, SectionSide side) {
    Box3 reach = body.bounds();
    if (s.region() == null && !reach.isBounded() || s.region() != null && !reach.grown(COINCIDENCE).overlaps(box(s))) {
      return null;
    }
    Region window = s.region() == null ? window(s.plane(), reach) : s.region();
    Region found = window.isEmpty() ? window : window.intersect(body.section(s.plane(), COINCIDENCE, side, window));
    return found.isEmpty() ? null : new Sheet(s.plane(), found, side);
  }

  private static SectionSide other(SectionSide side) {
    return side == SectionSide.BELOW ? SectionSide.ABOVE : SectionSide.BELOW;
  }

  /** Of a plane, what a box can reach. */
  private static Region window(Plane plane, Box3 box) {
    double half = box.diagonal() / 2 + 1;
    double u = plane.u(box.centre());
    double v = plane.v(box.centre());
    return box.isEmpty() ? Region.EMPTY : Region.rectangle(u - half, v - half, u + half, v + half);
  }

  private static Box3 box(Sheet s) {
    return Box3.of(s.region().rings().stream().flatMap(r -> r.points().stream()).map(p -> s.plane().at(p.u(), p.v())).toList());
  }

  private static Stream<List<Vec3>> triangles(Sheet s) {
    return s.region().parts().stream().flatMap(p -> {
      try {
        return triangles(s, p);
      } catch (IllegalArgumentException touchesItself) {
        // A hole that touches the outline in one corner: a hair's breadth less, and it doesn't.
        return p.grown(-COINCIDENCE).parts().stream().flatMap(q -> triangles(s, q));
      }
    });
  }

  private static Stream<List<Vec3>> triangles(Sheet s, Region part) {
    List<Vec2> outer = part.rings().stream().filter(r -> !r.hole()).findFirst().orElseThrow().points();
    List<List<Vec2>> holes = part.rings().stream().filter(Region.Ring::hole).map(Region.Ring::points).toList();
    List<Vec2> all = Stream.concat(Stream.of(outer), holes.stream()).flatMap(List::stream).toList();
    int last = s.material() == SectionSide.BELOW ? 2 : 1;
    return FlatTriangles.of(outer, holes).stream().map(t -> Stream.of(t[0], t[3 - last], t[last]).map(i -> all.get(i))
        .map(p -> s.plane().at(p.u(), p.v())).toList());
  }
}
