package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.HoldPoint;
import org.seamledger.detail.Seal;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeContent;
import org.seamledger.node.LineSort;
import org.seamledger.node.NodeFastening;
import org.seamledger.node.NodeLine;
import org.seamledger.node.NodePart;
import org.seamledger.node.NodeSeal;
import org.seamledger.takeoff.Takeoff;

/** The words around a node's drawing: what it is, its pieces in their order, seals, fasteners, hold points, source. */
final class NodeCaption {

  private static final double LARGEST = 2.6;
  private static final double SMALLEST = 1.5;
  private static final double PITCH = 1.36;
  private static final double INDENT = 9;

  /** A paragraph; {@code look} is how its seal or fastener is drawn beside it, or empty. */
  private record Entry(boolean head, String look, String words) {
  }

  private final Takeoff takeoff;
  private final KindedNode node;
  private final NodeContent content;
  private final DrawingUnits units;

  NodeCaption(Takeoff takeoff, KindedNode node, DrawingUnits units) {
    this.takeoff = takeoff;
    this.node = node;
    this.content = node.kind().content();
    this.units = units;
  }

  void title(PaperBox room, Svg svg) {
    Vec3 at = takeoff.world(node.node().at());
    double left = room.left() + 4;
    int most = (int) ((room.width() - 8) / (5 * 0.62));
    svg.text(content.title().length() > most ? "title long" : "title", new Vec2(left, room.top() + 7),
        Sheet.cut(content.title(), (int) (most * 1.2), false));
    int columns = (int) ((room.width() - 8) / (2.9 * 0.57));
    svg.text("subtitle", new Vec2(left, room.top() + 12), Sheet.cut("Node " + node.id() + " · " + node.kind().label() + " · x "
        + MeasureFormat.fixed(at.x(), 3) + "  y " + MeasureFormat.fixed(at.y(), 3) + "  z " + MeasureFormat.fixed(at.z(), 3) + " m · "
        + Sheet.models(takeoff), columns, false));
    svg.text("subtitle", new Vec2(left, room.top() + 16.4), Sheet.cut("Lines " + String.join(", ", node.node().junctions()) + " · faces "
        + String.join(", ", node.node().faces()) + " · " + takeoff.system().name(), columns, false));
  }

  /** The words in a column, as large as it has room; gives y below them. */
  double column(PaperBox column, Svg svg) {
    List<Entry> entries = entries();
    double size = LARGEST;
    while (size > SMALLEST && height(entries, column, size) > column.height()) {
      size -= 0.1;
    }
    double y = column.top() + size;
    for (Entry e : entries) {
      y += e.head ? size * 0.5 : 0;
      look(e.look, new Vec2(column.left() + 1, y - size * 0.35), svg);
      for (String line : Sheet.wrapped(e.words, columns(e, column, size))) {
        svg.sized(e.head ? "head" : "list", e.head ? size * 1.1 : size, new Vec2(column.left() + (e.look.isEmpty() ? 0 : INDENT), y), line);
        y += size * PITCH;
      }
    }
    return y;
  }

  private static int columns(Entry e, PaperBox column, double size) {
    return (int) ((column.width() - (e.look.isEmpty() ? 0 : INDENT)) / (size * 0.53));
  }

  private static double height(List<Entry> entries, PaperBox column, double size) {
    return entries.stream().mapToDouble(e -> size * (PITCH * Sheet.wrapped(e.words, columns(e, column, size)).size() + (e.head ? 0.5 : 0)))
        .sum();
  }

  private static void look(String look, Vec2 at, Svg svg) {
    if (look.equals("fastener")) {
      svg.empty("circle", "class", look, "cx", Svg.number(at.u() + 3), "cy", Svg.number(at.v()), "r", "0.75");
    } else if (!look.isEmpty()) {
      svg.line(look, at, at.plus(new Vec2(6, 0)));
    }
  }

  private List<Entry> entries() {
    List<Entry> entries = new ArrayList<>();
    pieces(entries);
    entries.add(new Entry(true, "", "Order of work"));
    entries.add(new Entry(false, "", content.note()));
    entries.add(new Entry(true, "", "Hold points"));
    for (HoldPoint point : content.holdPoints()) {
      entries.add(new Entry(false, "", "Before " + point.before() + ": " + point.check() + "."));
    }
    entries.add(new Entry(true, "", "Source"));
    entries.add(new Entry(false, "", content.source() + ". Replace it by the panel maker's tested detail."));
    entries.add(new Entry(false, "",
        "Lines and slopes are the model's; dimensions are true lengths along the slope; a dashed line inside an edge is its hem. Sheet "
            + "thickness and the take-up of bends are not drawn."));
    return entries;
  }

  /** The same numbers as in the figure. */
  private void pieces(List<Entry> entries) {
    entries.add(new Entry(true, "", content.parts().isEmpty() ? "No pieces" : "Pieces, from the first that is fitted to the last"));
    for (int i = 0; i < content.parts().size(); i++) {
      NodePart part = content.parts().get(i);
      int count = part.count(node.facts());
      entries.add(new Entry(false, "", (i + 1) + ": " + count + " × " + part.part() + ": " + folded(part)));
      for (NodeSeal seal : content.seals()) {
        if (seal.of().equals(part.id())) {
          entries.add(new Entry(false, NodeStyle.look(seal.form()), seal.form().word() + " " + seal.place() + ", " + count + " × "
              + seal.lines() + " × " + units.small(seal.lengthM()) + ", " + exposure(seal)));
        }
      }
      for (NodeFastening fastening : content.fastenings()) {
        if (fastening.of().equals(part.id())) {
          entries.add(new Entry(false, "fastener", count * fastening.count() + " × " + fastening.type().label() + " "
              + units.small(fastening.lengthM()) + ", " + fastening.joins().word().replace("-", " to ") + ": " + fastening.place()));
        }
      }
    }
  }

  private static String exposure(NodeSeal seal) {
    return seal.exposure() == Seal.Exposure.EXPOSED ? "EXPOSED" : seal.exposure().word();
  }

  /** The piece's sheet, and the widths of its flats as they are drawn. */
  private String folded(NodePart part) {
    String sheet = "sheet " + units.small(part.girthM());
    return switch (part.shape()) {
      case STRIP, KICK_OUT -> sheet + ", " + units.small(part.lengthM()) + " along each line; " + widths(part);
      case END -> units.small(part.girthM()) + " high, " + units.small(part.lengthM()) + " wide, its foot cut to the slopes";
      case PATCH -> sheet + ", reaches " + units.small(part.lengthM()) + " from the node";
    };
  }

  /** What a strip's sheet is folded to along the lines that this node has. */
  private String widths(NodePart part) {
    List<LineSort> sorts = node.lines().stream().map(NodeLine::sort).filter(part::liesOn).distinct().toList();
    List<String> words = new ArrayList<>();
    if (sorts.stream().anyMatch(s -> !s.isEdge())) {
      words.add(units.small(Folding.flangeM(part, false)) + " on either slope, a hem of " + units.small(Folding.HEM) + " at both edges");
    }
    if (sorts.stream().anyMatch(LineSort::isEdge)) {
      boolean up = sorts.stream().anyMatch(s -> s.isWall() || s.isCurb());
      boolean down = sorts.stream().anyMatch(s -> s.isEdge() && !s.isWall() && !s.isCurb());
      words.add(units.small(Folding.flangeM(part, true)) + " on the roof, a leg of " + units.small(Folding.legM(part))
          + (up && down ? " up walls and down over edges" : up ? " up" : " down") + ", a hem of " + units.small(Folding.HEM)
          + (up && down ? " at the free edge" : up ? " on the roof" : " at its foot"));
    }
    return String.join("; ", words);
  }
}
