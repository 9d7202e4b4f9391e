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

  private static final double LEAST_REACH = 0.45;
  /** How much more of the roof is shown than the longest piece covers. */
  private static final double AROUND = 1.6;
  private static final int DISC = 24;

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

  /** Fall directions of the faces: from a point of each, the unit vector down it. */
  List<Vec3[]> falls() {
    List<Vec3[]> falls = new ArrayList<>();
    for (List<Vec3> flat : ground()) {
      Vec3 middle = flat.stream().reduce(Vec3.ZERO, Vec3::plus).times(1.0 / flat.size());
      Vec3 normal = flat.get(1).minus(flat.get(0)).cross(flat.get(2).minus(flat.get(0)));
      Vec3 down = new Vec3(normal.x(), normal.y(), 0).times(normal.z() < 0 ? -1 : 1);
      if (down.length() > 1e-6 * normal.length()) {
        falls.add(new Vec3[] {middle, down.unit()});
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
    Folding folding = new Folding(at, part);
    return switch (part.shape()) {
      case STRIP -> folding.strip(along);
      case END -> folding.end(along);
      case KICK_OUT -> folding.kickOut(along);
      case PATCH -> folding.patch(along, around(facesOf(along), part.lengthM()));
    };
  }

  private List<RoofFace> facesOf(List<Arm> along) {
    return faces.stream().filter(f -> along.stream().anyMatch(a -> a.line().end().junction().faces().contains(f.id()))).toList();
  }
}
