package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.NodeContent;
import org.seamledger.node.NodeFastening;
import org.seamledger.node.NodeSeal;

/** Draws one view of a node: roof, lines, pieces with their seals and fasteners; what is behind first. */
final class NodeFigure {

  /** How high above the roof the first piece is drawn in an oblique view, of the reach, and each other above the one before. */
  private static final double FIRST = 0.16;
  private static final double APART = 0.62;
  /** The second of two seals lies so much nearer to the node. */
  private static final double BESIDE = 0.1;

  private final NodeScene scene;
  private final List<Piece> pieces;
  private final NodeView view;

  NodeFigure(NodeScene scene, List<Piece> pieces, NodeView view) {
    this.scene = scene;
    this.pieces = pieces;
    this.view = view;
  }

  NodeView view() {
    return view;
  }

  NodeScene scene() {
    return scene;
  }

  List<Piece> pieces() {
    return pieces;
  }

  /** The same at a scale in a place, its own extent in the middle of it. */
  NodeFigure in(PaperBox place, double scale) {
    return new NodeFigure(scene, pieces, view.in(place, scale, extent()));
  }

  /** Draws it with names, dimensions and numbers. */
  void draw(PaperBox place, DrawingUnits units, Svg svg) {
    PaperRoom room = new PaperRoom(place);
    svg.open("g", "class", view.oblique() ? "oblique" : "plan");
    scene.ground().forEach(flat -> svg.polygon("ground", view.paper(flat, 0)));
    walls().forEach(w -> svg.polygon("wall-face", w));
    for (Arm arm : scene.arms()) {
      svg.line("arm " + arm.line().sort().word(), view.paper(scene.at()), view.paper(reached(arm, 1)));
      room.line(List.of(view.paper(scene.at()), view.paper(reached(arm, 1))));
    }
    for (Piece piece : pieces) {
      piece(piece, lift(piece), svg);
      edges(piece).forEach(room::line);
      piece.joints().forEach(joint -> room.line(view.paper(joint, lift(piece))));
    }
    new NodeMarks(this, room, units).draw(svg);
    svg.close("g");
  }

  /** What everything drawn takes of the paper, millimetres. */
  PaperBox extent() {
    List<Vec2> all = new ArrayList<>();
    scene.ground().forEach(flat -> all.addAll(view.paper(flat, 0)));
    walls().forEach(all::addAll);
    scene.arms().forEach(arm -> all.add(view.paper(reached(arm, 1))));
    pieces.forEach(piece -> edges(piece).forEach(all::addAll));
    all.add(view.paper(scene.at()));
    return new PaperBox(all.stream().mapToDouble(Vec2::u).min().orElse(0), all.stream().mapToDouble(Vec2::v).min().orElse(0),
        all.stream().mapToDouble(Vec2::u).max().orElse(0), all.stream().mapToDouble(Vec2::v).max().orElse(0));
  }

  /** Outlines of a piece on paper. */
  private List<List<Vec2>> edges(Piece piece) {
    List<List<Vec2>> edges = new ArrayList<>();
    for (Piece.Flat flat : piece.flats()) {
      List<Vec2> ring = new ArrayList<>(view.paper(flat.corners(), lift(piece)));
      ring.add(ring.get(0));
      edges.add(ring);
    }
    return edges;
  }

  double lift(Piece piece) {
    return view.oblique() ? scene.reach() * (FIRST + APART * order(piece)) : 0;
  }

  int order(Piece piece) {
    return scene.node().kind().content().parts().indexOf(piece.part());
  }

  Vec3 reached(Arm arm, double share) {
    return scene.at().plus(arm.way().times(share * scene.reach()));
  }

  /** What stands at lines of walls and penetrations, behind the pieces. */
  private List<List<Vec2>> walls() {
    List<List<Vec2>> walls = new ArrayList<>();
    for (Arm arm : scene.arms()) {
      if (view.oblique() && Vec3.Z.equals(arm.leg())) {
        Vec3 up = Vec3.Z.times(scene.reach() / 2);
        walls.add(view.paper(List.of(scene.at(), reached(arm, 1), reached(arm, 1).plus(up), scene.at().plus(up)), 0));
      }
    }
    return walls;
  }

  private void piece(Piece piece, double lift, Svg svg) {
    NodeContent content = scene.node().kind().content();
    String id = piece.part().id();
    if (lift > 0) {
      svg.line("rise", view.paper(scene.at()), view.paper(scene.at(), lift));
    }
    svg.open("g", "data-part", id);
    piece.flats().stream().sorted(Comparator.comparingDouble(f -> view.nearness(f.middle())))
        .forEach(f -> svg.polygon(f.stands() ? "piece stands" : "piece", view.paper(f.corners(), lift)));
    piece.hems().forEach(hem -> svg.line("hem", view.paper(hem.get(0), lift), view.paper(hem.get(1), lift)));
    seals(piece, content.seals().stream().filter(seal -> seal.of().equals(id)).toList(), lift, svg);
    for (NodeFastening fastening : content.fastenings()) {
      if (fastening.of().equals(id)) {
        piece.spread(fastening.count()).forEach(p -> {
          Vec2 at = view.paper(p, lift);
          svg.empty("circle", "class", "fastener", "data-fastener", fastening.id(), "cx", Svg.number(at.u()), "cy", Svg.number(at.v()), "r",
              "0.75");
        });
      }
    }
    svg.close("g");
  }

  /** Each seal along the joints of its piece; a second one beside the first, so that both are seen. */
  private void seals(Piece piece, List<NodeSeal> seals, double lift, Svg svg) {
    for (int i = 0; i < seals.size(); i++) {
      double share = 1 - BESIDE * i;
      svg.open("g", "data-seal", seals.get(i).id());
      for (List<Vec3> joint : piece.joints()) {
        svg.polyline(NodeStyle.look(seals.get(i).form()), view.paper(joint.stream().map(p -> scene.at().towards(p, share)).toList(), lift));
      }
      svg.close("g");
    }
  }
}
