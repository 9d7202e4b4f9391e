package org.seamledger.export.node;

import java.util.List;
import org.seamledger.export.sheet.KeyPlan;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.ServedPlaces;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.sheet.TitleStrip;
import org.seamledger.export.wording.CountText;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeContent;
import org.seamledger.takeoff.Takeoff;

/** A node's sheet: plan, oblique view and the words. */
public final class NodeSheet {

  /** Half the width of the plan on paper, millimetres. */
  private static final double HALF = 76;
  private static final double MIDDLE = 125;
  /** Height of the title of a sheet in a set. */
  private static final double TITLE = 19;
  private static final List<Integer> SCALES = List.of(5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50);

  private NodeSheet() {
  }

  /** The sheet as SVG text, always on A3. */
  public static String svg(Takeoff takeoff, KindedNode node, DrawingUnits units) {
    SheetSetup setup = new SheetSetup(Paper.A3, units, SheetSetup.DEFAULT.title());
    NodeScene scene = new NodeScene(node, takeoff.faces());
    List<Piece> pieces = scene.pieces();
    int scale = SCALES.stream().filter(s -> scene.reach() * 1000 / s <= HALF).findFirst().orElse(50);
    String title = "Node " + node.id() + ": " + node.kind().content().title();
    Svg sheet = Sheet.begin(setup.paper(), scale, title, "Plan and oblique view of node " + node.id() + ", " + node.kind().label(),
        NodeStyle.STYLE);
    Svg svg = new Svg();
    new NodeFigure(scene, pieces, new NodeView(scene.at(), new Vec2(108, MIDDLE), 1000.0 / scale, false, 0), svg).draw();
    new NodeFigure(scene, pieces, new NodeView(scene.at(), new Vec2(312, MIDDLE), 1000.0 / scale, true, turn(scene)), svg).draw();
    NodeCaption.draw(takeoff, node, scale, setup, svg);
    return sheet.toString() + new Svg().open("g", "transform", "translate(10 2)") + svg + "</g>\n</svg>\n";
  }

  /**
   * The sheet of a kind of node in a larger set, on any paper: plan, oblique view and words of one node, and the places that it serves.
   *
   * @param served nodes of this kind, the first of them the one that is drawn
   */
  public static String inSet(Takeoff takeoff, SheetSetup setup, List<KindedNode> served) {
    KindedNode node = served.get(0);
    NodeContent content = node.kind().content();
    PaperBox room = TitleStrip.room(setup.paper());
    double columnWidth = setup.paper().isSmall() ? 92 : 112;
    PaperBox column = new PaperBox(room.right() - columnWidth, room.top() + TITLE, room.right() - 3, room.bottom() - 2);
    double width = (column.left() - 4 - room.left()) / 2;
    double half = Math.min(width / 2 - (setup.paper().isSmall() ? 8 : 16), (room.height() - TITLE - 24) / 2);
    NodeScene scene = new NodeScene(node, takeoff.faces());
    int scale = SCALES.stream().filter(s -> scene.reach() * 1000 / s <= half).findFirst().orElse(50);
    Svg svg = Sheet.begin(setup.paper(), scale, "Nodes of the kind " + node.kind().label() + ": " + content.title(),
        "Plan and oblique view of node " + node.id(), NodeStyle.STYLE + ".column-head { font-weight: 600; }\n");
    double y = room.top() + TITLE + 4 + (room.height() - TITLE - 4) / 2;
    NodeView plan = new NodeView(scene.at(), new Vec2(room.left() + width / 2, y), 1000.0 / scale, false, 0);
    new NodeFigure(scene, scene.pieces(), plan, svg).draw();
    NodeView oblique = new NodeView(scene.at(), new Vec2(room.left() + width * 1.5, y), 1000.0 / scale, true, turn(scene));
    new NodeFigure(scene, scene.pieces(), oblique, svg).draw();
    titles(takeoff, node, room, svg);
    svg.text("head", new Vec2(room.left() + 4, room.top() + TITLE + 3), "Plan");
    svg.text("head", new Vec2(room.left() + width + 4, room.top() + TITLE + 3), "Oblique view, pieces drawn apart");
    svg.line("rule", new Vec2(column.left() - 2, room.top() + TITLE - 1), new Vec2(column.left() - 2, room.bottom()));
    NodeColumn.draw(node, column, svg);
    KeyPlan key = TitleStrip.draw(takeoff, setup, TitleStrip.Words.inSet(content.title(), Sheet.scale(scale)), scale, svg);
    served.forEach(n -> key.mark(List.of(n.node().at()), svg));
    ServedPlaces.draw("Serves " + CountText.of(served.size(), "place"), served.stream().map(KindedNode::id).toList(), setup, svg);
    return svg.close("svg").toString();
  }

  private static void titles(Takeoff takeoff, KindedNode node, PaperBox room, Svg svg) {
    double left = room.left() + 4;
    String title = node.kind().content().title();
    int most = (int) ((room.width() - 8) / (5 * 0.62));
    svg.text(title.length() > most ? "title long" : "title", new Vec2(left, room.top() + 7), Sheet.cut(title, (int) (most * 1.2), false));
    int columns = (int) ((room.width() - 8) / (2.9 * 0.57));
    Vec3 at = takeoff.world(node.node().at());
    svg.text("subtitle", new Vec2(left, room.top() + 12), Sheet.cut("Drawn at node " + node.id() + " · " + node.kind().label() + " · x "
        + MeasureFormat.fixed(at.x(), 3) + "  y " + MeasureFormat.fixed(at.y(), 3) + "  z " + MeasureFormat.fixed(at.z(), 3) + " m · "
        + Sheet.models(takeoff), columns, false));
    svg.text("subtitle", new Vec2(left, room.top() + 16.4), Sheet.cut("Lines " + String.join(", ", node.node().junctions()) + " · faces "
        + String.join(", ", node.node().faces()) + " · " + takeoff.system().name(), columns, false));
  }

  /** The roof is turned so that its faces fall towards who looks, and a little to the side. */
  private static double turn(NodeScene scene) {
    Vec3 fall = scene.falls().stream().map(f -> f[1]).reduce(Vec3.ZERO, Vec3::plus);
    return fall.planLength() < 1e-6 ? Math.PI / 6 : -Math.PI / 2 - StrictMath.atan2(fall.y(), fall.x()) + Math.PI / 6;
  }
}
