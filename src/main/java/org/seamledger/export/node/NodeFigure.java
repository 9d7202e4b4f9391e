package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.NodeContent;
import org.seamledger.node.NodeFastening;
import org.seamledger.node.NodeSeal;

/** Draws one view of a node: roof, lines, pieces with their seals and fasteners, and numbers that the list beside explains. */
final class NodeFigure {

  /** Pieces are drawn so far apart in an oblique view, metres: as in an exploded drawing. */
  private static final double APART = 0.05;
  private static final double RING = 8;
  /** The second of two seals lies so much nearer to the node. */
  private static final double BESIDE = 0.1;
  /** Balloons on the ring stand at least so far apart, radians. */
  private static final double BETWEEN = 0.17;

  private record Balloon(int number, Vec2 points, double angle) {
  }

  private final NodeScene scene;
  private final List<Piece> pieces;
  private final NodeView view;
  private final PaperBox place;
  private final Svg svg;

  NodeFigure(NodeScene scene, List<Piece> pieces, NodeView view, PaperBox place, Svg svg) {
    this.scene = scene;
    this.pieces = pieces;
    this.view = view;
    this.place = place;
    this.svg = svg;
  }

  /** @param dimensions drawn over the pieces */
  void draw(NodeDimensions dimensions) {
    svg.open("g", "class", view.oblique() ? "oblique" : "plan");
    scene.ground().forEach(flat -> svg.polygon("ground", view.paper(flat, 0)));
    walls();
    for (Arm arm : scene.arms()) {
      svg.line("arm " + arm.line().sort().word(), view.paper(scene.at()), view.paper(reached(arm, 1)));
    }
    for (int i = 0; i < pieces.size(); i++) {
      piece(pieces.get(i), lift(i));
    }
    dimensions.draw(view, svg);
    names();
    balloons();
    svg.close("g");
  }

  private double lift(int i) {
    return view.oblique() ? APART * (1 + order(pieces.get(i))) : 0;
  }

  private int order(Piece piece) {
    return scene.node().kind().content().parts().indexOf(piece.part());
  }

  private Vec3 reached(Arm arm, double share) {
    return scene.at().plus(arm.way().times(share * scene.reach()));
  }

  /** What stands at lines of walls and penetrations, behind the pieces. */
  private void walls() {
    for (Arm arm : scene.arms()) {
      if (view.oblique() && Vec3.Z.equals(arm.leg())) {
        Vec3 up = Vec3.Z.times(scene.reach() / 2);
        svg.polygon("wall-face", view.paper(List.of(scene.at(), reached(arm, 1), reached(arm, 1).plus(up), scene.at().plus(up)), 0));
      }
    }
  }

  private void piece(Piece piece, double lift) {
    NodeContent content = scene.node().kind().content();
    String id = piece.part().id();
    svg.open("g", "data-part", id);
    piece.flats().stream().sorted(Comparator.comparingDouble(f -> view.paper(middle(f), 0).v()))
        .forEach(flat -> svg.polygon("piece", view.paper(flat, lift)));
    seals(piece, content.seals().stream().filter(seal -> seal.of().equals(id)).toList(), lift);
    for (NodeFastening fastening : content.fastenings()) {
      if (fastening.of().equals(id)) {
        piece.spread(fastening.count()).forEach(p -> {
          Vec2 place = view.paper(p, lift);
          svg.empty("circle", "class", "fastener", "data-fastener", fastening.id(), "cx", Svg.number(place.u()), "cy",
              Svg.number(place.v()), "r", "0.75");
        });
      }
    }
    svg.close("g");
  }

  /** Each seal along the joints of its piece; a second one beside the first, so that both are seen. */
  private void seals(Piece piece, List<NodeSeal> seals, double lift) {
    for (int i = 0; i < seals.size(); i++) {
      double share = 1 - BESIDE * i;
      svg.open("g", "data-seal", seals.get(i).id());
      for (List<Vec3> joint : piece.joints()) {
        svg.polyline(NodeStyle.look(seals.get(i).form()), view.paper(joint.stream().map(p -> scene.at().towards(p, share)).toList(), lift));
      }
      svg.close("g");
    }
  }

  private static Vec3 middle(List<Vec3> flat) {
    return flat.stream().reduce(Vec3.ZERO, Vec3::plus).times(1.0 / flat.size());
  }

  private void names() {
    for (Arm arm : scene.arms()) {
      Vec2 end = view.paper(reached(arm, 1.04));
      Vec2 way = end.minus(view.middle());
      String words = LineWords.of(arm.line());
      double width = words.length() * 2.6 * 0.56;
      double left = Math.abs(way.u()) < 10 ? end.u() - width / 2 : way.u() < 0 ? end.u() - width : end.u();
      double inside = Math.max(place.left() + 1, Math.min(place.right() - 1 - width, left));
      svg.text("arm-name halo", new Vec2(inside, end.v() + (way.v() > 0 ? 3 : -0.5)), words);
    }
    if (!view.oblique()) {
      for (Vec3[] fall : scene.falls()) {
        Vec3 to = fall[0].plus(fall[1].times(scene.reach() / 6));
        svg.line("fall", view.paper(fall[0]), view.paper(to));
        svg.empty("circle", "class", "fall-head", "cx", Svg.number(view.paper(to).u()), "cy", Svg.number(view.paper(to).v()), "r", "0.8");
      }
    }
  }

  private void balloons() {
    List<Balloon> balloons = new ArrayList<>();
    for (int i = 0; i < pieces.size(); i++) {
      Piece piece = pieces.get(i);
      Vec2 place = view.paper(grip(piece), lift(i));
      Vec2 out = place.minus(view.middle());
      balloons.add(new Balloon(order(piece) + 1, place, out.length() < 1 ? -Math.PI / 2 : StrictMath.atan2(out.v(), out.u())));
    }
    balloons.sort(Comparator.comparingDouble(Balloon::angle));
    double last = -10;
    double ring = view.perMetre() * scene.reach() + RING;
    for (Balloon b : balloons) {
      double angle = Math.max(b.angle(), last + BETWEEN);
      last = angle;
      Vec2 at = new Vec2(view.middle().u() + ring * StrictMath.cos(angle), view.middle().v() + ring * StrictMath.sin(angle));
      svg.line("leader", b.points(), at);
      svg.empty("circle", "class", "dot", "cx", Svg.number(b.points().u()), "cy", Svg.number(b.points().v()), "r", "0.6");
      svg.empty("circle", "class", "balloon", "cx", Svg.number(at.u()), "cy", Svg.number(at.v()), "r", "3.2");
      svg.open("g", "text-anchor", "middle").text("balloon-text", new Vec2(at.u(), at.v() + 1.2), Integer.toString(b.number())).close("g");
    }
  }

  /** A place on a piece that a leader points to: the middle of its largest flat, as it is seen. */
  private Vec3 grip(Piece piece) {
    return piece.flats().stream().max(Comparator.comparingDouble(f -> area(view.paper(f, 0)))).map(NodeFigure::middle).orElse(scene.at());
  }

  private static double area(List<Vec2> ring) {
    double sum = 0;
    for (int i = 0; i < ring.size(); i++) {
      sum += ring.get(i).cross(ring.get((i + 1) % ring.size()));
    }
    return Math.abs(sum);
  }
}
