package org.seamledger.export.submittal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.crew.PlaceCounts;
import org.seamledger.export.crew.PlaceOrder;
import org.seamledger.export.node.NodeSheet;
import org.seamledger.export.section.SectionSheet;
import org.seamledger.export.sheet.TagCode;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeKind;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.sequence.PlacedHoldPoint;
import org.seamledger.sequence.Step;
import org.seamledger.takeoff.Takeoff;

/** For each detail and each kind of node in use: its drawing, then its order of work and its places, each with counts and code. */
final class CrewKindPages implements SubmittalPages {

  /** Side of a code on paper, millimetres: larger than the 15 mm that telephones need at arm's length (common practice, no source). */
  private static final double CODE = 18;

  private final Takeoff takeoff;
  private final SubmittalContent content;
  private final PlaceOrder order;
  private final Map<String, List<DetailedJunction>> details = new TreeMap<>();
  private final Map<NodeKind, List<KindedNode>> kinds;

  CrewKindPages(Takeoff takeoff, SubmittalContent content) {
    this.takeoff = takeoff;
    this.content = content;
    this.order = new PlaceOrder(takeoff.sequence());
    Comparator<DetailedJunction> longestFirst = Comparator.comparingDouble(j -> -j.junction().junction().lengthM());
    takeoff.lines().stream().filter(j -> !j.detail().equals(Detail.NONE)).sorted(longestFirst.thenComparing(SubmittalContent::id))
        .forEach(j -> details.computeIfAbsent(j.detail().id(), id -> new ArrayList<>()).add(j));
    kinds = takeoff.nodes().stream().filter(n -> !n.kind().content().parts().isEmpty())
        .collect(Collectors.groupingBy(KindedNode::kind, TreeMap::new, Collectors.toList()));
  }

  @Override
  public OutlineEntry outline() {
    List<OutlineEntry> all = Stream.concat(details.values().stream().map(s -> s.get(0).detail())
        .map(d -> new OutlineEntry(d.title(), SubmittalContent.detailPlace(d.id()))),
        kinds.keySet().stream().map(k -> new OutlineEntry(k.content().title(), SubmittalContent.nodeKindPlace(k.id())))).toList();
    return new OutlineEntry("Junctions and nodes", all.isEmpty() ? "crew-days" : all.get(0).id(), all);
  }

  @Override
  public void write(FoWriter fo) {
    details.forEach((id, served) -> {
      String title = served.get(0).detail().title();
      content.frame().drawing(SectionSheet.inSet(takeoff, content.setup().sheets(), served),
          "Section to scale, square to the line of junction " + SubmittalContent.id(served.get(0)) + ": " + title,
          SubmittalContent.detailPlace(id), fo);
      content.frame().text(title, 1, () -> detail(served, fo), fo);
    });
    kinds.forEach((kind, served) -> {
      content.frame().drawing(NodeSheet.inSet(takeoff, content.setup().sheets(), served),
          "Plan and oblique view to scale of node " + served.get(0).id() + ": " + kind.content().title(),
          SubmittalContent.nodeKindPlace(kind.id()), fo);
      content.frame().text(kind.content().title(), 1, () -> node(kind, served, fo), fo);
    });
  }

  private void detail(List<DetailedJunction> served, FoWriter fo) {
    Detail detail = served.get(0).detail();
    FoHeadings.title(fo, SubmittalContent.detailPlace(detail.id()) + "-work", detail.title());
    work(SubmittalContent.id(served.get(0)), fo);
    FoTable table = table(fo);
    for (DetailedJunction j : served) {
      String id = SubmittalContent.id(j);
      place(table, id, j.junction().type().label() + ", " + content.units().length(j.junction().junction().lengthM()) + ", "
          + String.join(" ", j.junction().junction().faces()) + " " + ElementNames.of(takeoff, j.junction().junction().elements()), fo);
    }
    table.close();
  }

  private void node(NodeKind kind, List<KindedNode> served, FoWriter fo) {
    FoHeadings.title(fo, SubmittalContent.nodeKindPlace(kind.id()) + "-work", kind.content().title());
    FoHeadings.paragraph(fo, kind.content().note());
    work(served.get(0).id(), fo);
    FoTable table = table(fo);
    for (KindedNode n : served) {
      place(table, n.id(), kind.label() + ", " + String.join(" ", n.node().faces()) + ", where "
          + n.node().leaving().stream().map(e -> e.junction().id()).collect(Collectors.joining(" ")) + " meet", fo);
    }
    table.close();
  }

  private void work(String place, FoWriter fo) {
    int number = 1;
    for (PlaceOrder.Item item : order.items(place)) {
      if (item.step() != null) {
        step(number++, item.step(), fo);
      } else {
        point(item.point(), fo);
      }
    }
  }

  private static void step(int number, Step step, FoWriter fo) {
    fo.open("block", "space-before", "1mm", "start-indent", "6mm", "text-indent", "-6mm");
    fo.words("inline", number + ". " + step.work().label() + ": ", "font-weight", "bold").text(step.work().does());
    fo.close("block");
  }

  private static void point(PlacedHoldPoint point, FoWriter fo) {
    boolean locks = !point.locks().isEmpty();
    fo.open("block", "space-before", "0.8mm", "start-indent", "10mm", "text-indent", "-4mm", "keep-together.within-column", "always");
    fo.words("inline", (locks ? "■" : "☐") + " Before " + point.before() + ": ", "font-weight", locks ? "bold" : "normal")
        .text(point.check()
            + ". ");
    fo.words("inline", "If not: " + point.ifFails(), "font-style", "normal", "color", "#44525f");
    if (locks) {
      fo.text(" Name, date, time: ____________________________");
    }
    fo.close("block");
  }

  private static FoTable table(FoWriter fo) {
    fo.block("", "space-after", "3mm");
    return FoTable.open(fo, FoTable.Column.words("Code", 14), FoTable.Column.words("Place", 28), FoTable.Column.words("What it takes", 42),
        FoTable.Column.words("After", 16));
  }

  private void place(FoTable table, String id, String what, FoWriter fo) {
    JunctionQuantities taken = takeoff.quantities().byJunction().get(id);
    List<String> counts = taken == null ? List.of() : PlaceCounts.of(taken, takeoff.system(), content.units());
    table.row().cell(() -> fo.drawing(TagCode.svg(TagCode.text(id), CODE), "Code of " + id, "content-width", CODE + "mm", "content-height",
        CODE + "mm")).cell(() -> {
          fo.words("inline", id, "font-weight", "bold").text(" " + what);
        }).cell(counts.isEmpty() ? "nothing of its own" : String.join("; ", counts)).cell(String.join(" ", order.waitsFor(id))).endRow();
  }
}
