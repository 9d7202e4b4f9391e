package org.seamledger.export.node;

import java.util.List;
import org.seamledger.detail.HoldPoint;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.wording.ScopeText;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeContent;
import org.seamledger.node.NodeFastening;
import org.seamledger.node.NodePart;
import org.seamledger.node.NodeSeal;
import org.seamledger.takeoff.Takeoff;

/** The words around a node's drawing: what it is, its pieces in their order, seals, fasteners, hold points, source. */
public final class NodeCaption {

  private static final double LINE = 3.9;

  private final Takeoff takeoff;
  private final KindedNode node;
  private final NodeContent content;
  private final Svg svg;

  private NodeCaption(Takeoff takeoff, KindedNode node, Svg svg) {
    this.takeoff = takeoff;
    this.node = node;
    this.content = node.kind().content();
    this.svg = svg;
  }

  /** Adds the words to a drawing at scale 1:{@code denominator}. */
  public static void draw(Takeoff takeoff, KindedNode node, double denominator, SheetSetup setup, Svg svg) {
    NodeCaption caption = new NodeCaption(takeoff, node, svg);
    caption.title();
    caption.pieces();
    caption.work(denominator, setup);
  }

  private void title() {
    Vec3 at = takeoff.world(node.node().at());
    svg.text(content.title().length() > 100 ? "title long" : "title", new Vec2(12, 15), content.title());
    svg.text("subtitle", new Vec2(12, 21.5), "Node " + node.id() + " · " + node.kind().label() + " · x " + MeasureFormat.fixed(at.x(), 3)
        + "  y " + MeasureFormat.fixed(at.y(), 3) + "  z " + MeasureFormat.fixed(at.z(), 3) + " m · " + Sheet.models(takeoff));
    svg.text("subtitle", new Vec2(12, 27), "Lines " + String.join(", ", node.node().junctions()) + " · faces "
        + String.join(", ", node.node().faces()) + " · " + takeoff.system().name());
    svg.text("head", new Vec2(14, 36), "Plan");
    svg.text("head", new Vec2(218, 36), "Oblique view, pieces drawn apart in their order");
    svg.line("rule", new Vec2(10, 214), new Vec2(398, 214));
  }

  /** As many lines as there are; the same numbers as in the figure. */
  private void pieces() {
    double y = 220;
    svg.text("head", new Vec2(12, y), content.parts().isEmpty() ? "No pieces" : "Pieces, from the first that is fitted to the last");
    for (int i = 0; i < content.parts().size(); i++) {
      NodePart part = content.parts().get(i);
      y += LINE;
      svg.text("small", new Vec2(12, y), (i + 1) + ": " + part.count(node.facts()) + " × " + part.part() + ", sheet "
          + millimetres(part.girthM()) + ", reaches " + millimetres(part.lengthM()));
      y = seals(part, y);
    }
  }

  private double seals(NodePart part, double above) {
    double y = above;
    for (NodeSeal seal : content.seals()) {
      if (seal.of().equals(part.id())) {
        y += LINE;
        String look = switch (seal.form()) {
          case TAPE -> "tape-line";
          case BEAD -> "bead-line";
          case IN_SEAM -> "soft-line";
        };
        svg.line(look, new Vec2(17, y - 0.8), new Vec2(23, y - 0.8));
        svg.text("small", new Vec2(25, y), seal.form().word() + " " + seal.place() + ", " + part.count(node.facts()) + " × " + seal.lines()
            + " × " + millimetres(seal.lengthM()) + ", " + seal.exposure().word());
      }
    }
    for (NodeFastening fastening : content.fastenings()) {
      if (fastening.of().equals(part.id())) {
        y += LINE;
        svg.empty("circle", "class", "fastener", "cx", "20", "cy", Svg.number(y - 0.8), "r", "0.75");
        svg.text("small", new Vec2(25, y), part.count(node.facts()) * fastening.count() + " × " + fastening.type().label() + " "
            + millimetres(fastening.lengthM()) + ", " + fastening.joins().word().replace("-", " to ") + ": " + fastening.place());
      }
    }
    return y;
  }

  private static String millimetres(double metres) {
    return MeasureFormat.formatMillimetres(metres) + " (" + MeasureFormat.formatInches(metres) + ")";
  }

  private void work(double denominator, SheetSetup setup) {
    double y = 220;
    svg.text("head", new Vec2(190, y), "Order of work");
    y = Sheet.paragraph(svg, "small", new Vec2(190, y + LINE), 3.4, 88, content.note());
    svg.text("head", new Vec2(190, y + 1.5), "Hold points");
    y += 1.5 + LINE;
    for (HoldPoint point : content.holdPoints()) {
      y = Sheet.paragraph(svg, "small", new Vec2(190, y), 3.4, 88, "Before " + point.before() + ": " + point.check() + ".");
    }
    Sheet.scaleBars(svg, new Vec2(322, 220), denominator, setup, 70);
    List<String> source = List.of("Source: " + content.source() + ". Replace it by the panel maker's tested detail.",
        "Lines and slopes are the model's; sheet thickness, hems and bends are not drawn.", ScopeText.SCOPE.text());
    double at = 270;
    for (String words : source) {
      at = Sheet.paragraph(svg, "fine", new Vec2(12, at), 3.2, 235, words);
    }
  }
}
