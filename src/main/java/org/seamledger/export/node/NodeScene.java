package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodePart;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;

/** A node with the roof around it as the model has it, and its pieces in their places. */
public final class NodeScene {

  private static final double LEAST_REACH = 0.28;
  /** How much more of the roof is shown than the longest piece covers. */
  private static final double AROUND = 1.45;
  private static final int DISC = 24;
  /** Sides of a patch that no line crosses: an octagon, cut square to the lines where they leave it. */
  private static final int SIDES = 8;
  /** A side of the octagon is left out where a line's own cut is as near as this, degrees. */
  private static final double NEAR = 40;

  private final KindedNode node;
  private final Vec3 at;
  private final List<RoofFace> faces;
  private final List<Arm> arms;
  private final double reach;

  /** @param all faces of the roof */
  public NodeScene(KindedNode node, List<RoofFace> all) {
    this.node = node;
    this.at = node.node().at();
    this.faces = all.stream().filter(f -> node.node().faces().contains(f.id())).toList();
    this.arms = node.lines().stream().map(l -> Arm.of(l, at, faces)).toList();
    double longest = node.kind().content().parts().stream().mapToDouble(p -> Math.max(p.lengthM(), p.girthM() / 2)).max().orElse(0);
    this.reach = Math.max(LEAST_REACH, AROUND * longest);
  }

  KindedNode node() {
    return node;
  }

  Vec3 at() {
    return at;
  }

  List<Arm> arms() {
    return arms;
  }

  /** How far around the node is shown, metres. */
  double reach() {
    return reach;
  }

  /** The roof around the node. */
  List<List<Vec3>> ground() {
    return around(faces, reach);
  }

  /** Where a face falls: from a point of it the unit vector down in plan, and its slope. */
  record Fall(Vec3 from, Vec3 down, double degrees) {
  }

  /** Fall directions of the faces. */
  List<Fall> falls() {
    List<Fall> falls = new ArrayList<>();
    for (List<Vec3> flat : ground()) {
      Vec3 middle = flat.stream().reduce(Vec3.ZERO, Vec3::plus).times(1.0 / flat.size());
      Vec3 normal = flat.get(1).minus(flat.get(0)).cross(flat.get(2).minus(flat.get(0)));
      Vec3 down = new Vec3(normal.x(), normal.y(), 0).times(normal.z() < 0 ? -1 : 1);
      if (down.length() > 1e-6 * normal.length()) {
        falls.add(new Fall(middle, down.unit(), Math.toDegrees(StrictMath.atan2(down.planLength(), Math.abs(normal.z())))));
      }
    }
    return falls;
  }

  /** The parts of faces within a radius of the node, as polygons. */
  private List<List<Vec3>> around(List<RoofFace> some, double radius) {
    List<List<Vec3>> flats = new ArrayList<>();
    for (RoofFace face : some) {
      for (Facet facet : face.facets()) {
        Plane plane = facet.plane();
        List<Vec2> disc = new ArrayList<>();
        for (int i = 0; i < DISC; i++) {
          double a = 2 * Math.PI * i / DISC;
          disc.add(new Vec2(plane.u(at) + radius * StrictMath.cos(a), plane.v(at) + radius * StrictMath.sin(a)));
        }
        if (Math.abs(plane.height(at)) < radius) {
          facet.area().intersect(Region.polygon(disc)).rings().stream().filter(r -> !r.hole() && r.points().size() > 2)
              .forEach(r -> flats.add(r.points().stream().map(p -> plane.at(p.u(), p.v())).toList()));
        }
      }
    }
    return flats;
  }

  /** All pieces, from the first that is fitted to the last; as many of each part as are counted. */
  public List<Piece> pieces() {
    List<Piece> pieces = new ArrayList<>();
    for (NodePart part : node.kind().content().parts()) {
      List<Arm> along = arms.stream().filter(a -> part.liesOn(a.line().sort())).toList();
      for (int i = 0; i < part.pieces(); i++) {
        if (part.per().isEmpty()) {
          pieces.add(piece(part, along.isEmpty() ? arms : along));
        } else {
          arms.stream().filter(a -> a.line().countsAs(part.per())).forEach(a -> pieces.add(piece(part, List.of(a))));
        }
      }
    }
    return pieces;
  }

  private Piece piece(NodePart part, List<Arm> along) {
    Folding folding = new Folding(at, part, arms);
    return switch (part.shape()) {
      case STRIP -> folding.strip(along);
      case END -> folding.end(along);
      case KICK_OUT -> folding.kickOut(along);
      case PATCH -> folding.patch(along, patch(along, part.lengthM()));
    };
  }

  /** What a patch covers of the roof: straight cuts square to the lines that leave it, others between. */
  private List<List<Vec3>> patch(List<Arm> along, double length) {
    List<List<Vec3>> flats = new ArrayList<>();
    for (RoofFace face : faces) {
      if (along.stream().anyMatch(a -> a.faces().contains(face.id()))) {
        Facet facet = Arm.nearest(face, at);
        List<Vec2> shape = cut(facet.plane(), arms.stream().filter(a -> a.faces().contains(face.id())).toList(), length);
        facet.area().intersect(Region.polygon(shape)).rings().stream().filter(r -> !r.hole() && r.points().size() > 2)
            .forEach(r -> flats.add(r.points().stream().map(p -> facet.plane().at(p.u(), p.v())).toList()));
      }
    }
    return flats;
  }

  /** A convex polygon in a plane around the node, as wide as {@code length} to every side. */
  private List<Vec2> cut(Plane plane, List<Arm> lines, double length) {
    Vec2 middle = new Vec2(plane.u(at), plane.v(at));
    List<Vec2> ways = new ArrayList<>();
    for (Arm arm : lines) {
      Vec3 to = at.plus(arm.way());
      Vec2 way = new Vec2(plane.u(to), plane.v(to)).minus(middle);
      ways.add(way.times(1 / Math.max(1e-9, way.length())));
    }
    double first = ways.isEmpty() ? 0 : StrictMath.atan2(ways.get(0).v(), ways.get(0).u());
    double near = StrictMath.cos(Math.toRadians(NEAR));
    List<Vec2> sides = new ArrayList<>(ways);
    for (int i = 0; i < SIDES; i++) {
      double a = first + 2 * Math.PI * i / SIDES;
      Vec2 side = new Vec2(StrictMath.cos(a), StrictMath.sin(a));
      if (ways.stream().noneMatch(w -> w.dot(side) > near)) {
        sides.add(side);
      }
    }
    List<Vec2> ring = new ArrayList<>(List.of(new Vec2(-4, -4), new Vec2(4, -4), new Vec2(4, 4), new Vec2(-4, 4)));
    for (Vec2 side : sides) {
      ring = within(ring, side);
    }
    return ring.stream().map(p -> middle.plus(p.times(length))).toList();
  }

  /** What of a polygon lies no farther than 1 in a direction. */
  private static List<Vec2> within(List<Vec2> ring, Vec2 side) {
    List<Vec2> kept = new ArrayList<>();
    for (int i = 0; i < ring.size(); i++) {
      Vec2 a = ring.get(i);
      Vec2 b = ring.get((i + 1) % ring.size());
      double da = 1 - a.dot(side);
      double db = 1 - b.dot(side);
      if (da >= 0) {
        kept.add(a);
      }
      if (da > 0 && db < 0 || da < 0 && db > 0) {
        kept.add(a.towards(b, da / (da - db)));
      }
    }
    return kept;
  }
}
