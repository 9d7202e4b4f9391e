package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.seamledger.export.PrintedSheet;
import org.seamledger.export.node.NodeScene;
import org.seamledger.export.node.NodeSheet;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.TitleBlock;
import org.seamledger.node.KindedNode;
import org.seamledger.takeoff.Takeoff;

/** Sheets of nodes of every kind that roofs with closed forms, samples and shared models have, measured as they would be printed. */
@Tag("slow")
class NodeLayoutTest {

  /** Nodes of one kind, from different roofs. */
  private static final int OF_A_KIND = 3;

  private static final List<SheetSetup> SETUPS = List.of(SheetSetup.DEFAULT,
      new SheetSetup(Paper.A4, DrawingUnits.US, TitleBlock.EMPTY), new SheetSetup(Paper.LETTER, DrawingUnits.BOTH, TitleBlock.EMPTY));

  private static List<Supplier<Takeoff>> roofs() throws IOException {
    List<Supplier<Takeoff>> roofs = new ArrayList<>();
    try (Stream<Path> files = Files.list(Path.of("ifc-samples"))) {
      files.filter(f -> f.toString().endsWith(".ifc")).sorted().forEach(f -> roofs.add(() -> Pipeline.analyse(f)));
    }
    RareCorners.all().values().forEach(house -> roofs.add(() -> Pipeline.analyse(house.get(), Form.PLAIN)));
    ClosedForms.all().forEach(c -> roofs.add(() -> Pipeline.analyse(c.house().get(), Form.PLAIN)));
    return roofs;
  }

  @Test
  void eachNodeIsReadAndItsPiecesAreNumbered() throws IOException {
    Map<String, Integer> seen = new TreeMap<>();
    for (Supplier<Takeoff> roof : roofs()) {
      Takeoff takeoff = roof.get();
      for (KindedNode node : takeoff.nodes()) {
        if (seen.merge(node.kind().id(), 1, Integer::sum) <= OF_A_KIND) {
          SETUPS.forEach(setup -> check(takeoff, node, setup));
        }
      }
    }
    assertThat(kinds()).filteredOn(kind -> !seen.containsKey(kind)).as("never seen").isEmpty();
  }

  /**
   * All kinds of the shapes, by the examples that each has, but for three: level ridges meet in one line or where a wall, a rake or a
   * valley gives the node its name; a line of a plain roof changes nowhere but at a wall's end; and the last kind is for what fits no
   * other.
   */
  private static List<String> kinds() throws IOException {
    try (Stream<Path> examples = Files.list(Path.of("shapes", "tests", "nodes"))) {
      return examples.map(f -> f.getFileName().toString().replaceFirst("\\.ttl$", ""))
          .filter(kind -> !List.of("ridge-meet", "line-change", "other-node").contains(kind)).toList();
    }
  }

  private static void check(Takeoff takeoff, KindedNode node, SheetSetup setup) {
    String where = node.kind().id() + " " + node.id() + " on " + setup.paper();
    PrintedSheet sheet = PrintedSheet.parse(NodeSheet.svg(takeoff, node, setup));
    sheet.isReadable(where);
    sheet.isInFrame(setup.paper(), where);
    int pieces = new NodeScene(node, takeoff.faces()).pieces().size();
    for (String view : List.of("plan", "oblique")) {
      assertThat(sheet.count("circle", "balloon", view)).as(where + ": numbers in the " + view).isEqualTo(pieces);
    }
    if (pieces > 0) {
      assertThat(sheet.count("text", "dim-text", "plan") + sheet.count("text", "dim-text", "oblique")).as(where + ": measures")
          .isPositive();
    }
  }
}
