package org.seamledger.export.node;

import java.util.List;
import java.util.Optional;
import org.seamledger.detail.FastenerType;
import org.seamledger.detail.Seal;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeContent;
import org.seamledger.node.NodeFastening;
import org.seamledger.node.NodeSeal;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.takeoff.Takeoff;

/** A node's first tape at full size, between the flange of its piece and the panel: in the plan it is only a line. */
final class TapeCircle {

  /** Sheets that touch are drawn apart. */
  private static final double GAP = 0.6;
  private static final double RADIUS = 18;
  private static final double SMALL_RADIUS = 13.5;

  private TapeCircle() {
  }

  private static Optional<NodeSeal> tape(KindedNode node) {
    NodeContent content = node.kind().content();
    return content.seals().stream().filter(s -> s.form() == Seal.Form.TAPE && content.pieces(s.of(), node.facts()) > 0).findFirst();
  }

  private static double radius(Paper paper) {
    return paper.isSmall() ? SMALL_RADIUS : RADIUS;
  }

  /** How much of the column's foot it takes, millimetres; 0 where no tape is laid. */
  static double height(KindedNode node, Paper paper) {
    return tape(node).isPresent() ? 2 * radius(paper) + 5 : 0;
  }

  /** Draws it at the left of a place, with words beside it; nothing where no tape is laid. */
  static void draw(Takeoff takeoff, KindedNode node, PaperBox place, DrawingUnits units, Svg svg) {
    RoofSystem system = takeoff.system();
    double radius = (place.height() - 5) / 2;
    tape(node).ifPresent(s -> {
      Vec2 at = new Vec2(place.left() + radius + 1, place.bottom() - radius - 1);
      boolean screwed = node.kind().content().fastenings().stream().filter(f -> f.of().equals(s.of())).map(NodeFastening::type)
          .anyMatch(t -> t != FastenerType.WEDGE);
      circle(at, radius, system.tape().width().value() * 1000, system.tape().thickness().value() * 1000, screwed, svg);
      double left = at.u() + radius + 3;
      svg.text("head", new Vec2(left, at.v() - 3), "Tape, " + Sheet.scale(1) + ", as laid");
      svg.text("small", new Vec2(left, at.v() + 1), units.stated(system.tape().thickness()) + " × " + units.stated(system.tape().width()));
      svg.text("small", new Vec2(left, at.v() + 4.4), "between the piece, above, and the panel");
    });
  }

  private static void circle(Vec2 at, double radius, double width, double thickness, boolean screwed, Svg svg) {
    double half = Math.min(width / 2, radius - 1);
    svg.empty("circle", "class", "enlarge", "cx", Svg.number(at.u()), "cy", Svg.number(at.v()), "r", Svg.number(radius));
    double low = at.v() + thickness / 2;
    double high = low - thickness;
    svg.polygon("tape", List.of(new Vec2(at.u() - half, high), new Vec2(at.u() + half, high), new Vec2(at.u() + half, low),
        new Vec2(at.u() - half, low)));
    chord(at, radius, high - GAP, "metal", svg);
    chord(at, radius, low + GAP, "panel", svg);
    if (screwed) {
      svg.line("shank", new Vec2(at.u(), high - GAP), new Vec2(at.u(), low + 3 * GAP));
      svg.polygon("screw-head", List.of(new Vec2(at.u() - 3, high - 2 * GAP), new Vec2(at.u() + 3, high - 2 * GAP),
          new Vec2(at.u() + 1.8, high - 2 * GAP - 2), new Vec2(at.u() - 1.8, high - 2 * GAP - 2)));
    }
  }

  private static void chord(Vec2 at, double radius, double v, String type, Svg svg) {
    double half = Math.sqrt(Math.max(0, radius * radius - (v - at.v()) * (v - at.v())));
    svg.line(type, new Vec2(at.u() - half, v), new Vec2(at.u() + half, v));
  }
}
