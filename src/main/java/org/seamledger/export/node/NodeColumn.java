package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.HoldPoint;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeContent;
import org.seamledger.node.NodeFastening;
import org.seamledger.node.NodePart;
import org.seamledger.node.NodeSeal;

/** The words beside a node's drawing in a column, as large as there is room for: pieces in their order, seals, fasteners, hold points. */
final class NodeColumn {

  private static final double LARGEST = 2.6;
  private static final double SMALLEST = 1.5;
  private static final double PITCH = 1.36;

  /** @param mark class of the stroke or ring before it; empty for none */
  private record Entry(boolean isHead, double indent, String mark, String words) {
  }

  private final KindedNode node;
  private final NodeContent content;
  private final List<Entry> entries = new ArrayList<>();

  private NodeColumn(KindedNode node) {
    this.node = node;
    this.content = node.kind().content();
  }

  static void draw(KindedNode node, PaperBox column, Svg svg) {
    NodeColumn words = new NodeColumn(node);
    words.collect();
    double size = LARGEST;
    while (size > SMALLEST && words.height(column, size) > column.height()) {
      size -= 0.1;
    }
    words.draw(column, size, svg);
  }

  private void collect() {
    head(content.parts().isEmpty() ? "No pieces" : "Pieces, from the first that is fitted to the last");
    for (int i = 0; i < content.parts().size(); i++) {
      NodePart part = content.parts().get(i);
      entries.add(new Entry(false, 0, "", (i + 1) + ": " + part.count(node.facts()) + " × " + part.part() + ", sheet "
          + length(part.girthM()) + ", reaches " + length(part.lengthM())));
      content.seals().stream().filter(s -> s.of().equals(part.id())).forEach(s -> seal(part, s));
      content.fastenings().stream().filter(f -> f.of().equals(part.id())).forEach(f -> fastening(part, f));
    }
    head("Order of work");
    plain(content.note());
    head("Hold points");
    for (HoldPoint point : content.holdPoints()) {
      plain("Before " + point.before() + ": " + point.check() + ".");
    }
    head("Source");
    plain(content.source() + ". Replace it by the panel maker's tested detail.");
    plain("Lines and slopes are those of the node drawn; sheet thickness, hems and bends are not drawn.");
  }

  private void head(String words) {
    entries.add(new Entry(true, 0, "", words));
  }

  private void plain(String words) {
    entries.add(new Entry(false, 0, "", words));
  }

  private void seal(NodePart part, NodeSeal seal) {
    String look = switch (seal.form()) {
      case TAPE -> "tape-line";
      case BEAD -> "bead-line";
      case IN_SEAM -> "soft-line";
    };
    entries.add(new Entry(false, 9, look, seal.form().word() + " " + seal.place() + ", " + part.count(node.facts()) + " × " + seal.lines()
        + " × " + length(seal.lengthM()) + ", " + seal.exposure().word()));
  }

  private void fastening(NodePart part, NodeFastening fastening) {
    entries.add(new Entry(false, 9, "fastener", part.count(node.facts()) * fastening.count() + " × " + fastening.type().label() + " "
        + length(fastening.lengthM()) + ", " + fastening.joins().word().replace("-", " to ") + ": " + fastening.place()));
  }

  private static String length(double metres) {
    return MeasureFormat.formatMillimetres(metres) + " (" + MeasureFormat.formatInches(metres) + ")";
  }

  private static List<String> lines(Entry entry, PaperBox column, double size) {
    return Sheet.wrapped(entry.words, (int) ((column.width() - entry.indent) / (size * 0.54)));
  }

  private double height(PaperBox column, double size) {
    return entries.stream().mapToDouble(e -> size * PITCH * (lines(e, column, size).size() + (e.isHead ? 0.7 : 0.2))).sum();
  }

  private void draw(PaperBox column, double size, Svg svg) {
    double y = column.top();
    for (Entry entry : entries) {
      y += entry.isHead ? size * PITCH * 0.7 : 0;
      mark(entry, new Vec2(column.left(), y + size * 0.7), svg);
      for (String line : lines(entry, column, size)) {
        svg.sized(entry.isHead ? "column-head" : "column", size, new Vec2(column.left() + entry.indent, y + size), line);
        y += size * PITCH;
      }
      y += entry.isHead ? 0 : size * PITCH * 0.2;
    }
  }

  private static void mark(Entry entry, Vec2 at, Svg svg) {
    if (entry.mark.equals("fastener")) {
      svg.empty("circle", "class", entry.mark, "cx", Svg.number(at.u() + 5), "cy", Svg.number(at.v()), "r", "0.75");
    } else if (!entry.mark.isEmpty()) {
      svg.line(entry.mark, at.plus(new Vec2(2, 0)), at.plus(new Vec2(8, 0)));
    }
  }
}
