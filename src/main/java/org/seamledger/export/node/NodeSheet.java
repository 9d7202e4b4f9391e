package org.seamledger.export.node;

import java.util.List;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.KindedNode;
import org.seamledger.takeoff.Takeoff;

/** A node's sheet: plan, oblique view and the words. */
public final class NodeSheet {

  /** Half the width of the plan on paper, millimetres. */
  private static final double HALF = 76;
  private static final double MIDDLE = 125;
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

  /** The roof is turned so that its faces fall towards who looks, and a little to the side. */
  private static double turn(NodeScene scene) {
    Vec3 fall = scene.falls().stream().map(f -> f[1]).reduce(Vec3.ZERO, Vec3::plus);
    return fall.planLength() < 1e-6 ? Math.PI / 6 : -Math.PI / 2 - StrictMath.atan2(fall.y(), fall.x()) + Math.PI / 6;
  }
}
