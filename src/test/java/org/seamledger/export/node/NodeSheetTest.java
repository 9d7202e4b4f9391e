package org.seamledger.export.node;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeContent;
import org.seamledger.progress.Progress;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** What is drawn of a node is what is counted: every part, seal and fastener of its content, as often as the ledger has it. */
@Tag("slow")
class NodeSheetTest {

  private static List<Path> samples() throws java.io.IOException {
    try (Stream<Path> files = Files.list(Path.of("ifc-samples"))) {
      return files.filter(f -> f.toString().endsWith(".ifc")).sorted().toList();
    }
  }

  private static long occurrences(String text, String attribute) {
    return Pattern.compile(Pattern.quote(attribute)).matcher(text).results().count();
  }

  private static String view(String svg, String name) {
    int from = svg.indexOf("<g class=\"" + name + "\">");
    int to = svg.indexOf(name.equals("plan") ? "<g class=\"oblique\">" : "<text class=\"title", from);
    return svg.substring(from, to);
  }

  @Test
  void everyPieceSealAndFastenerIsDrawnAsOftenAsItIsCounted() throws java.io.IOException {
    Set<String> seen = new TreeSet<>();
    for (Path sample : samples()) {
      Takeoff takeoff = Analysis.run(Inputs.ofFiles(List.of(sample)), Progress.NONE);
      for (KindedNode node : takeoff.nodes()) {
        String svg = NodeSheet.svg(takeoff, node, SheetSetup.DEFAULT);
        seen.add(node.kind().id());
        for (String view : List.of("plan", "oblique")) {
          compare(takeoff.quantities().byJunction().get(node.id()), node, view(svg, view), sample + " " + node.id() + " " + view);
        }
      }
    }
    assertThat(seen).hasSizeGreaterThan(20);
  }

  private static void compare(JunctionQuantities counted, KindedNode node, String drawn, String what) {
    NodeContent content = node.kind().content();
    List<String> parts = new ArrayList<>();
    counted.metal().forEach(m -> {
      String id = content.parts().stream().filter(p -> p.part().equals(m.part())).findFirst().orElseThrow().id();
      parts.add(id);
      assertThat(occurrences(drawn, "data-part=\"" + id + "\"")).as("%s %s", what, id).isEqualTo(m.pieces());
    });
    assertThat(Pattern.compile("data-part=\"([^\"]+)\"").matcher(drawn).results().map((MatchResult r) -> r.group(1)).distinct())
        .as(what).containsExactlyInAnyOrderElementsOf(parts);
    content.seals().forEach(s -> assertThat(occurrences(drawn, "data-seal=\"" + s.id() + "\"")).as("%s %s", what, s.id())
        .isEqualTo(content.pieces(s.of(), node.facts())));
    assertThat(occurrences(drawn, "data-fastener=")).as(what).isEqualTo(counted.fasteners().stream().mapToInt(FastenerRow::count).sum());
    assertThat(drawn).as(what).doesNotContain("NaN");
  }
}
