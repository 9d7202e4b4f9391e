package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * Plan and oblique view of a node on their sheet: beside each other or above each other, whichever makes them larger, at one scale.
 *
 * @param scale n of 1:n
 * @param planPlace the paper of the plan, and
 * @param obliquePlace that of the oblique view
 */
record NodeLayout(NodeScene scene, NodeFigure plan, NodeFigure oblique, int scale, PaperBox planPlace, PaperBox obliquePlace) {

  private static final List<Integer> SCALES = List.of(2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100);
  /** Paper around a view for names, dimensions and numbers. */
  private static final double SIDE = 19;
  private static final double HIGH = 11;
  private static final double SMALL_PLACE = 200;
  /** Above the oblique view for its title. */
  private static final double HEAD = 5;
  private static final int TURNS = 24;

  static NodeLayout of(NodeScene scene, PaperBox place) {
    List<Piece> pieces = scene.pieces();
    NodeFigure plan = new NodeFigure(scene, pieces, NodeView.unit(scene.at(), false, 0));
    NodeFigure oblique = new NodeFigure(scene, pieces, NodeView.unit(scene.at(), true, turn(scene, pieces)));
    PaperBox a = plan.extent();
    PaperBox b = oblique.extent();
    double side = place.width() < SMALL_PLACE ? SIDE * 0.8 : SIDE;
    double beside = Math.min((place.width() - 4 * side) / (a.width() + b.width()),
        (place.height() - 2 * HIGH) / Math.max(a.height(), b.height()));
    double above = Math.min((place.width() - 2 * side) / Math.max(a.width(), b.width()),
        (place.height() - 4 * HIGH - HEAD) / (a.height() + b.height()));
    double most = Math.max(beside, above);
    int scale = SCALES.stream().filter(n -> 1000.0 / n <= most).findFirst().orElse(100);
    List<PaperBox> places = beside >= above ? beside(place, a.width() + 2 * side * scale / 1000, b.width() + 2 * side * scale / 1000)
        : above(place, a.height() + 2 * HIGH * scale / 1000, b.height() + 2 * HIGH * scale / 1000);
    return new NodeLayout(scene, plan.in(places.get(0), 1000.0 / scale), oblique.in(places.get(1), 1000.0 / scale), scale, places.get(0),
        places.get(1));
  }

  private static List<PaperBox> beside(PaperBox place, double first, double second) {
    double at = place.left() + place.width() * first / (first + second);
    return List.of(new PaperBox(place.left(), place.top(), at, place.bottom()),
        new PaperBox(at, place.top(), place.right(), place.bottom()));
  }

  private static List<PaperBox> above(PaperBox place, double first, double second) {
    double at = place.top() + (place.height() - HEAD) * first / (first + second);
    return List.of(new PaperBox(place.left(), place.top(), place.right(), at),
        new PaperBox(place.left(), at + HEAD, place.right(), place.bottom()));
  }

  void draw(DrawingUnits units, Svg svg) {
    plan.draw(planPlace, units, svg);
    oblique.draw(obliquePlace, units, svg);
    // After the views: what stands on the sheet is read in this order.
    svg.text("head", new Vec2(planPlace.left() + 2, planPlace.top() - 1), "Plan");
    svg.text("head", new Vec2(obliquePlace.left() + 2, obliquePlace.top() - 1), "Oblique view, pieces drawn apart in their order");
  }

  /** The roof is turned so that legs and slopes show the sides that are to be seen, those that stand up above all. */
  private static double turn(NodeScene scene, List<Piece> pieces) {
    double best = 0;
    double most = -Double.MAX_VALUE;
    for (int i = 0; i < TURNS; i++) {
      double turn = 2 * Math.PI * (i + 0.5) / TURNS;
      double score = score(NodeView.unit(scene.at(), true, turn), scene, pieces);
      if (score > most + 1e-9) {
        most = score;
        best = turn;
      }
    }
    return best;
  }

  private static double score(NodeView view, NodeScene scene, List<Piece> pieces) {
    double seen = 0;
    double whole = 0;
    double worst = 1;
    for (Piece piece : pieces) {
      for (Piece.Flat flat : piece.flats()) {
        double facing =
            flat.front() == null ? Math.abs(view.facing(Vec3.Z.cross(flat.corners().get(1).minus(flat.corners().get(0)).unit())))
                : view.facing(flat.front());
        seen += flat.area() * facing;
        whole += flat.area();
        worst = flat.stands() ? Math.min(worst, facing) : worst;
      }
    }
    List<Vec3> walls = new ArrayList<>();
    scene.arms().stream().filter(a -> Vec3.Z.equals(a.leg())).forEach(a -> walls.addAll(a.sides()));
    double open = walls.stream().mapToDouble(view::facing).min().orElse(0);
    double falls = scene.falls().stream().mapToDouble(f -> view.facing(f.down())).average().orElse(0);
    return (whole > 0 ? seen / whole : 0) + worst + open + 0.3 * falls;
  }
}
