package org.seamledger.export.submittal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.report.JunctionsSection;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.export.wording.FactWords;
import org.seamledger.export.wording.OverrideText;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.node.KindedNode;
import org.seamledger.takeoff.Takeoff;

/** Every junction, every joint of panels and every node, each with what it is, where it is, and where more is said of it. */
final class SchedulePages implements SubmittalPages {

  /** Rows of one run of pages: the formatter keeps a whole run in memory. */
  static final int RUN = 1500;
  private static final String JOINTS = SubmittalContent.place(PageSet.SCHEDULE) + "-joints";
  private static final String NODES = SubmittalContent.place(PageSet.SCHEDULE) + "-nodes";

  private final SubmittalContent content;
  private final Takeoff takeoff;
  private final Set<String> roofElements;
  private final Map<String, SortedSet<String>> codes;

  SchedulePages(SubmittalContent content) {
    this.content = content;
    this.takeoff = content.takeoff();
    this.roofElements = takeoff.faces().stream().flatMap(f -> f.elements().stream()).collect(Collectors.toSet());
    this.codes = takeoff.codesByJunction();
  }

  @Override
  public OutlineEntry outline() {
    return new OutlineEntry(PageSet.SCHEDULE.title(), SubmittalContent.place(PageSet.SCHEDULE),
        Stream.concat(takeoff.joints().stream().limit(1).map(j -> new OutlineEntry("Panel joints", JOINTS)),
            takeoff.nodes().stream().limit(1).map(n -> new OutlineEntry("Nodes", NODES))).toList());
  }

  @Override
  public void write(FoWriter fo) {
    lines("Schedule of junctions", SubmittalContent.place(PageSet.SCHEDULE), takeoff.detailed(), fo);
    if (!takeoff.joints().isEmpty()) {
      lines("Schedule of panel joints, within faces", JOINTS, takeoff.joints(), fo);
    }
    for (int from = 0; from < takeoff.nodes().size(); from += RUN) {
      List<KindedNode> run = takeoff.nodes().subList(from, Math.min(takeoff.nodes().size(), from + RUN));
      boolean isFirst = from == 0;
      content.frame().text("Schedule of nodes", 1, () -> nodes(isFirst, run, fo), fo);
    }
  }

  private void lines(String title, String place, List<DetailedJunction> lines, FoWriter fo) {
    List<DetailedJunction> sorted = new ArrayList<>();
    JunctionsSection.byKind(lines).values().forEach(sorted::addAll);
    for (int from = 0; from == 0 || from < sorted.size(); from += RUN) {
      List<DetailedJunction> run = sorted.subList(from, Math.min(sorted.size(), from + RUN));
      boolean isFirst = from == 0;
      content.frame().text(title, 1, () -> {
        if (isFirst) {
          FoHeadings.title(fo, place, title);
        }
        junctions(run, fo);
      }, fo);
    }
  }

  private void junctions(List<DetailedJunction> junctions, FoWriter fo) {
    if (junctions.isEmpty()) {
      FoHeadings.paragraph(fo, "The model has no junctions.");
      return;
    }
    FoTable table =
        FoTable.open(fo, FoTable.Column.words("Junction", 11), FoTable.Column.words("Kind", 13), FoTable.Column.words("Detail", 17),
            FoTable.Column.number("Length", 15), FoTable.Column.words("Faces", 9), FoTable.Column.words("Meets, and measures", 32),
            FoTable.Column.words("Findings", 17));
    junctions.forEach(j -> junction(j, table, fo));
    table.close();
  }

  private void junction(DetailedJunction detailed, FoTable table, FoWriter fo) {
    Junction junction = detailed.junction().junction();
    String detail = detailed.detail().equals(Detail.NONE) ? "none" : detailed.detail().id();
    table.row(content.places().get(junction.id())).cell(junction.id()).cell(detailed.junction().type().label());
    table.cell(() -> {
      if (detail.equals("none")) {
        fo.text(detail);
      } else {
        content.link(PageSet.DETAILS, SubmittalContent.detailPlace(detail), detail, fo);
      }
    });
    table.cell(content.units().length(junction.lengthM())).cell(String.join(" ", junction.faces())).cell(measured(detailed));
    table.cell(() -> findings(junction.id(), fo)).endRow();
  }

  private String measured(DetailedJunction detailed) {
    Junction junction = detailed.junction().junction();
    List<String> neighbours = junction.elements().stream().filter(id -> !roofElements.contains(id)).toList();
    List<String> words = new ArrayList<>();
    words.add(neighbours.isEmpty() ? "" : ElementNames.of(takeoff, neighbours));
    words.add(detailed.decided().isEmpty() ? "" : OverrideText.MARK);
    words.add(FactWords.of(junction.facts()));
    words.removeIf(String::isBlank);
    return String.join(", ", words);
  }

  private void kind(KindedNode node, FoWriter fo) {
    if (node.kind().content().parts().isEmpty()) {
      fo.text(node.kind().label());
    } else {
      content.link(PageSet.NODES, SubmittalContent.nodeKindPlace(node.kind().id()), node.kind().label(), fo);
    }
  }

  private void findings(String id, FoWriter fo) {
    int n = 0;
    for (String code : codes.getOrDefault(id, new TreeSet<>())) {
      fo.text(n++ == 0 ? "" : ", ");
      content.link(PageSet.FINDINGS, SubmittalContent.findingPlace(code), code, fo);
    }
  }

  private void nodes(boolean isFirst, List<KindedNode> nodes, FoWriter fo) {
    if (isFirst) {
      FoHeadings.title(fo, NODES, "Schedule of nodes");
      FoHeadings.paragraph(fo, "Where lines end and meet; coordinates are the model's own, in metres.");
    }
    FoTable table = FoTable.open(fo, FoTable.Column.words("Node", 11), FoTable.Column.words("Kind", 20), FoTable.Column.number("x", 9),
        FoTable.Column.number("y", 9), FoTable.Column.number("z", 8), FoTable.Column.words("Junctions", 33),
        FoTable.Column.words("Faces", 11),
        FoTable.Column.words("Findings", 15));
    for (KindedNode node : nodes) {
      Vec3 at = takeoff.world(node.node().at());
      table.row(content.places().get(node.id())).cell(node.id()).cell(() -> kind(node, fo)).cell(MeasureFormat.fixed(at.x(), 3))
          .cell(MeasureFormat.fixed(at.y(), 3)).cell(MeasureFormat.fixed(at.z(), 3))
          .cell(() -> content.places(node.node().junctions(), fo)).cell(String.join(" ", node.node().faces()))
          .cell(() -> findings(node.id(), fo)).endRow();
    }
    table.close();
  }
}
