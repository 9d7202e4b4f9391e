package org.seamledger.export.node;

import java.util.List;
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
  private static final double HEAD = 5;

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
    NodeLayout layout = NodeLayout.of(new NodeScene(node, takeoff.faces()), place);
    int scale = layout.scale();
    Svg svg = Sheet.begin(setup.paper(), scale,
        isInSet ? "Nodes of the kind " + node.kind().label() + ": " + title : "Node " + node.id() + ": " + title,
        "Plan and oblique view of node " + node.id() + ", " + node.kind().label(), NodeStyle.style());
    NodeStyle.hatches(svg);
    // What a small screen shows of the sheet.
    svg.open("g", "class", "drawn", "data-view", String.join(" ", Svg.number(place.left()), Svg.number(place.top()),
        Svg.number(place.width()), Svg.number(place.height())));
    layout.draw(setup.units(), svg);
    svg.close("g");
    NodeCaption caption = new NodeCaption(takeoff, node, setup.units());
    caption.title(room, svg);
    svg.line("rule", new Vec2(column.left() - 2, room.top() + TITLE - 1), new Vec2(column.left() - 2, room.bottom()));
    double foot = TapeCircle.height(node, setup.paper());
    caption.column(new PaperBox(column.left(), column.top(), column.right(), column.bottom() - foot), svg);
    TapeCircle.draw(takeoff, node, new PaperBox(column.left(), column.bottom() - foot, column.right(), column.bottom()), setup.units(),
        svg);
    TitleStrip.Words words =
        isInSet ? TitleStrip.Words.inSet(title, Sheet.scale(scale)) : new TitleStrip.Words(title, Sheet.scale(scale), 1, 1);
    KeyPlan key = TitleStrip.draw(takeoff, setup, words, scale, svg);
    if (isInSet) {
      served.forEach(n -> key.mark(List.of(n.node().at()), svg));
      ServedPlaces.draw("Serves " + CountText.of(served.size(), "place"), served.stream().map(KindedNode::id).toList(), setup, svg);
    } else {
      key.mark(marked(layout.scene()), svg);
    }
    return svg.close("svg").toString();
  }

  /** A small cross at the node, for the key plan. */
  private static List<Vec3> marked(NodeScene scene) {
    double arm = scene.reach();
    return List.of(scene.at().plus(new Vec3(-arm, 0, 0)), scene.at().plus(new Vec3(arm, 0, 0)), scene.at(),
        scene.at().plus(new Vec3(0, arm, 0)), scene.at().plus(new Vec3(0, -arm, 0)));
  }
}
