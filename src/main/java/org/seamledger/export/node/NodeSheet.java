package org.seamledger.export.node;

import java.util.List;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.KeyPlan;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.ServedPlaces;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.sheet.TitleStrip;
import org.seamledger.export.wording.CountText;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.KindedNode;
import org.seamledger.takeoff.Takeoff;

/** A node's sheet: plan, oblique view, the words in a column, title block. */
public final class NodeSheet {

  private static final double TITLE = 19;
  /** Paper around a view for its numbers. */
  private static final double RING = 14;
  private static final double HEAD = 5;
  private static final List<Integer> SCALES = List.of(2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100);

  private NodeSheet() {
  }

  /** The sheet of one node as SVG text. */
  public static String svg(Takeoff takeoff, KindedNode node, SheetSetup setup) {
    return draw(takeoff, setup, List.of(node), false);
  }

  /**
   * The sheet of a kind of node in a larger set: one node, and the places that it serves.
   *
   * @param served nodes of this kind, the first of them the one that is drawn
   */
  public static String inSet(Takeoff takeoff, SheetSetup setup, List<KindedNode> served) {
    return draw(takeoff, setup, served, true);
  }

  private static String draw(Takeoff takeoff, SheetSetup setup, List<KindedNode> served, boolean isInSet) {
    KindedNode node = served.get(0);
    String title = node.kind().content().title();
    PaperBox room = TitleStrip.room(setup.paper());
    double width = setup.paper().isSmall() ? 98 : 112;
    PaperBox column = new PaperBox(room.right() - width, room.top() + TITLE, room.right() - 3, room.bottom() - 2);
    PaperBox place = new PaperBox(room.left() + 2, room.top() + TITLE + HEAD, column.left() - 4, room.bottom() - 2);
    double radius = radius(place);
    NodeScene scene = new NodeScene(node, takeoff.faces());
    int scale = SCALES.stream().filter(s -> scene.reach() * 1000 / s <= radius - RING).findFirst().orElse(100);
    Svg svg = Sheet.begin(setup.paper(), scale,
        isInSet ? "Nodes of the kind " + node.kind().label() + ": " + title : "Node " + node.id() + ": " + title,
        "Plan and oblique view of node " + node.id() + ", " + node.kind().label(), NodeStyle.style());
    NodeStyle.hatches(svg);
    figures(scene, place, radius, scale, setup.units(), svg);
    NodeCaption caption = new NodeCaption(takeoff, node, setup.units());
    caption.title(room, svg);
    TapeCircle.draw(takeoff, node, place, radius, setup.units(), svg);
    svg.line("rule", new Vec2(column.left() - 2, room.top() + TITLE - 1), new Vec2(column.left() - 2, room.bottom()));
    caption.column(column, svg);
    TitleStrip.Words words =
        isInSet ? TitleStrip.Words.inSet(title, Sheet.scale(scale)) : new TitleStrip.Words(title, Sheet.scale(scale), 1, 1);
    KeyPlan key = TitleStrip.draw(takeoff, setup, words, scale, svg);
    if (isInSet) {
      served.forEach(n -> key.mark(List.of(n.node().at()), svg));
      ServedPlaces.draw("Serves " + CountText.of(served.size(), "place"), served.stream().map(KindedNode::id).toList(), setup, svg);
    } else {
      key.mark(marked(scene), svg);
    }
    return svg.close("svg").toString();
  }

  private static void figures(NodeScene scene, PaperBox place, double radius, int scale, DrawingUnits units, Svg svg) {
    Vec2 plan = new Vec2(place.left() + radius, place.top() + radius);
    Vec2 oblique = new Vec2(place.right() - radius, place.bottom() - radius);
    views(scene, new NodeView(scene.at(), plan, 1000.0 / scale, false, 0),
        new NodeView(scene.at(), oblique, 1000.0 / scale, true, turn(scene)), new NodeDimensions(scene, units), place, svg);
    // After the views: what stands on the sheet is read in this order.
    svg.text("head", new Vec2(place.left() + 2, place.top() - 1), "Plan");
    svg.text("head", new Vec2(oblique.u() - radius * 0.6, place.bottom() - 1), "Oblique view, pieces drawn apart in their order");
  }

  private static void views(NodeScene scene, NodeView plan, NodeView oblique, NodeDimensions dimensions, PaperBox place, Svg svg) {
    List<Piece> pieces = scene.pieces();
    new NodeFigure(scene, pieces, plan, place, svg).draw(dimensions);
    new NodeFigure(scene, pieces, oblique, place, svg).draw(NodeDimensions.NONE);
  }

  /** The radius of two equal circles in opposite corners of a place that don't touch. */
  private static double radius(PaperBox place) {
    double radius = Math.min(place.width(), place.height()) / 2;
    while (Math.hypot(place.width() - 2 * radius, place.height() - 2 * radius) < 2 * radius) {
      radius -= 0.5;
    }
    return radius;
  }

  /** A small cross at the node, for the key plan. */
  private static List<Vec3> marked(NodeScene scene) {
    double arm = scene.reach();
    return List.of(scene.at().plus(new Vec3(-arm, 0, 0)), scene.at().plus(new Vec3(arm, 0, 0)), scene.at(),
        scene.at().plus(new Vec3(0, arm, 0)), scene.at().plus(new Vec3(0, -arm, 0)));
  }

  /** The roof is turned so that its faces fall towards who looks, and a little to the side. */
  private static double turn(NodeScene scene) {
    Vec3 fall = scene.falls().stream().map(f -> f[1]).reduce(Vec3.ZERO, Vec3::plus);
    return fall.planLength() < 1e-6 ? Math.PI / 6 : -Math.PI / 2 - StrictMath.atan2(fall.y(), fall.x()) + Math.PI / 6;
  }
}
