package org.seamledger.ifc.solid;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Facets;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.MeshBuilder;
import org.seamledger.geometry.PolygonOutline;
import org.seamledger.geometry.Skin;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.placement.Placements;

/** IfcCsgPrimitive3D: block, pyramid, cone, cylinder, sphere. */
final class Primitives {

  private Primitives() {
  }

  static Solid solid(Entity e, Transform outside) {
    Transform t = outside.after(Placements.axes(e.entity(0)));
    return switch (e.keyword()) {
      case "IFCBLOCK" -> Skin.prism(corner(e.positiveLength(1), e.positiveLength(2)), t,
          t.applyDirection(new Vec3(0, 0, e.positiveLength(3))));
      case "IFCRECTANGULARPYRAMID" -> {
        double x = e.positiveLength(1);
        double y = e.positiveLength(2);
        yield pointed(corner(x, y), new Vec3(x / 2, y / 2, e.positiveLength(3)), t);
      }
      case "IFCRIGHTCIRCULARCONE" -> pointed(disk(e.positiveLength(2)), new Vec3(0, 0, e.positiveLength(1)), t);
      case "IFCRIGHTCIRCULARCYLINDER" -> Skin.prism(disk(e.positiveLength(2)), t, t.applyDirection(new Vec3(0, 0, e.positiveLength(1))));
      case "IFCSPHERE" -> sphere(e.positiveLength(1), t);
      default -> throw new IllegalStateException(e.keyword());
    };
  }

  private static PolygonOutline corner(double x, double y) {
    return new PolygonOutline(List.of(new Vec2(0, 0), new Vec2(x, 0), new Vec2(x, y), new Vec2(0, y)), List.of());
  }

  private static PolygonOutline disk(double r) {
    int n = Facets.aTurn(r);
    List<Vec2> points = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      points.add(new Vec2(r * Math.cos(2 * Math.PI * i / n), r * Math.sin(2 * Math.PI * i / n)));
    }
    return new PolygonOutline(points, List.of());
  }

  private static Mesh pointed(PolygonOutline base, Vec3 tip, Transform t) {
    List<Vec3> ring = Skin.placed(base, t).get(0);
    Vec3 top = t.apply(tip);
    MeshBuilder mesh = new MeshBuilder();
    List<Vec3> down = new ArrayList<>(ring);
    java.util.Collections.reverse(down);
    mesh.face(down, List.of());
    for (int i = 0; i < ring.size(); i++) {
      mesh.triangle(ring.get(i), ring.get((i + 1) % ring.size()), top);
    }
    return mesh.build();
  }

  private static Mesh sphere(double r, Transform t) {
    int n = Facets.aTurn(r);
    int rows = n / 2;
    List<List<List<Vec3>>> sections = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double a = 2 * Math.PI * i / n;
      List<Vec3> meridian = new ArrayList<>();
      for (int k = 0; k <= rows; k++) {
        double b = Math.PI * k / rows - Math.PI / 2;
        double c = k == 0 || k == rows ? 0 : Math.cos(b);
        meridian.add(t.apply(new Vec3(r * c * Math.cos(a), r * c * Math.sin(a), r * Math.sin(b))));
      }
      sections.add(List.of(meridian));
    }
    return Skin.over(sections, true);
  }
}
