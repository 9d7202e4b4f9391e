package org.seamledger.export.submittal;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.export.node.NodeSheet;
import org.seamledger.export.sheet.ServedPlaces;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeKind;
import org.seamledger.node.NodePart;

/** A sheet for each kind of node that takes pieces: one of them in plan and oblique view, and the places that it serves. */
final class NodePages implements SubmittalPages {

  private final SubmittalContent content;
  private final SortedMap<NodeKind, List<KindedNode>> kinds;

  NodePages(SubmittalContent content) {
    this.content = content;
    this.kinds = content.takeoff().nodes().stream().filter(n -> !n.kind().content().parts().isEmpty())
        .collect(Collectors.groupingBy(KindedNode::kind, TreeMap::new, Collectors.toList()));
  }

  @Override
  public OutlineEntry outline() {
    return new OutlineEntry(PageSet.NODES.title(), SubmittalContent.place(PageSet.NODES),
        kinds.keySet().stream().map(k -> new OutlineEntry(k.content().title(), SubmittalContent.nodeKindPlace(k.id()))).toList());
  }

  @Override
  public void write(FoWriter fo) {
    content.frame().text(PageSet.NODES.title(), 1, () -> list(fo), fo);
    kinds.forEach((kind, served) -> {
      content.frame().drawing(NodeSheet.inSet(content.takeoff(), content.setup().sheets(), served), instead(kind, served),
          SubmittalContent.nodeKindPlace(kind.id()), fo);
      if (!ServedPlaces.fit(served.size(), content.setup().sheets())) {
        content.frame().text("Nodes: " + kind.label(), content.frame().columns(), () -> places(kind, served, fo), fo);
      }
    });
  }

  private static String instead(NodeKind kind, List<KindedNode> served) {
    return "Plan and oblique view to scale of node " + served.get(0).id() + ", " + kind.label() + ": " + kind.content().title()
        + ". Pieces: "
        + kind.content().parts().stream().map(NodePart::part).collect(Collectors.joining(", ")) + ". " + kind.content().note()
        + " It serves " + served.size() + (served.size() == 1 ? " place." : " places.");
  }

  private void list(FoWriter fo) {
    FoHeadings.title(fo, SubmittalContent.place(PageSet.NODES), "Nodes, where lines end and meet");
    if (kinds.isEmpty()) {
      FoHeadings.paragraph(fo, "No node takes pieces of its own.");
      return;
    }
    FoTable table = FoTable.open(fo, FoTable.Column.words("Kind", 18), FoTable.Column.words("What is done", 45),
        FoTable.Column.number("Places", 8), FoTable.Column.words("Source", 29));
    kinds.forEach((kind, served) -> table.row()
        .cell(() -> content.link(PageSet.NODES, SubmittalContent.nodeKindPlace(kind.id()), kind.label(), fo)).cell(kind.content().title())
        .cell(Integer.toString(served.size())).cell(kind.content().source()).endRow());
    table.close();
  }

  private void places(NodeKind kind, List<KindedNode> served, FoWriter fo) {
    FoHeadings.title(fo, SubmittalContent.nodeKindPlace(kind.id()) + "-places", "Nodes: " + kind.label());
    FoTable table = FoTable.open(fo, FoTable.Column.words("Node", 10), FoTable.Column.number("x", 8), FoTable.Column.number("y", 8),
        FoTable.Column.number("z", 8));
    for (KindedNode node : served) {
      Vec3 at = content.takeoff().world(node.node().at());
      table.row().cell(() -> content.place(node.id(), fo)).cell(MeasureFormat.fixed(at.x(), 3)).cell(MeasureFormat.fixed(at.y(), 3))
          .cell(MeasureFormat.fixed(at.z(), 3)).endRow();
    }
    table.close();
  }
}
