package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.SharedModels;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Fastening;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.progress.Progress;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/**
 * What is drawn is what is counted, of junctions and of joints of panels, in every model: each part, seal and line of fasteners of which
 * the ledger has an amount is drawn once in a group that bears its id and listed with that amount; nothing else is. Nodes: NodeSheetTest.
 */
@Tag("slow")
class DrawnIsCountedTest {

  @TempDir
  private static Path folder;

  static Stream<Path> samples() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("ifc-samples"))) {
      return files.filter(f -> f.toString().endsWith(".ifc")).sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void samplesAreDrawnAsTheyAreCounted(Path model) {
    compareAll(Analysis.run(Inputs.ofFiles(List.of(model)), Progress.NONE), model.toString());
  }

  @Test
  void realModelsAreDrawnAsTheyAreCounted() throws IOException {
    for (Path model : SharedModels.all()) {
      if (!model.getFileName().toString().startsWith("d14")) {
        compareAll(Analysis.run(Inputs.ofFiles(List.of(model)), Progress.NONE), model.toString());
      }
    }
  }

  /** Panels that are too long, with and without plates behind what is fastened to the pan alone. */
  @Test
  void jointsAreDrawnAsTheyAreCounted() throws IOException {
    for (String panel : List.of("\"longest\": \"10 ft\"", "\"movementGap\": \"4.2 mm\"")) {
      for (boolean plates : new boolean[] {false, true}) {
        Path system = Files.writeString(folder.resolve("system.json"),
            "{\"panel\": {" + panel + "}, \"fasteners\": {\"backUpPlates\": " + plates + "}}");
        for (String model : List.of("worked/ridge-40ft.ifc", "worked/regular-hip.ifc", "stable.ifc")) {
          Takeoff takeoff = Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples", model))).withSystem(Optional.of(system)),
              Progress.NONE);
          assertThat(takeoff.joints()).as(model + " " + panel).isNotEmpty();
          compareAll(takeoff, model + " " + panel);
        }
      }
    }
  }

  /** One line of each detail, the longest. */
  private static void compareAll(Takeoff takeoff, String what) {
    Map<String, DetailedJunction> longest = new LinkedHashMap<>();
    takeoff.lines().stream().filter(j -> !j.detail().equals(Detail.NONE))
        .sorted(Comparator.comparingDouble((DetailedJunction j) -> -j.junction().junction().lengthM()))
        .forEach(j -> longest.putIfAbsent(j.detail().id(), j));
    longest.values().forEach(j -> compare(takeoff, j, what + ", " + j.detail().id()));
  }

  static void compare(Takeoff takeoff, DetailedJunction junction, String what) {
    String id = junction.junction().junction().id();
    Drawn drawn = Drawn.parse(SectionDrawing.svg(takeoff, id, SheetSetup.DEFAULT));
    List<String> groups = drawn.elements("g", "drawn").stream().map(e -> e.getAttribute("data-part")).filter(p -> !p.isEmpty()).toList();
    List<String> notes = drawn.elements("g", "pointed").stream().map(e -> e.getAttribute("data-words")).toList();
    JunctionQuantities counted = takeoff.quantities().byJunction().get(id);
    TreeSet<String> asked = new TreeSet<>();
    for (MetalPart part : junction.detail().metal()) {
      if (counted.metal().stream().anyMatch(m -> m.part().equals(part.part()) && m.pieces() > 0)) {
        asked.add("metal " + part.id());
        assertThat(notes).as(what + ", " + part.part()).anyMatch(n -> n.startsWith(part.part() + ", ") && n.contains("; "));
      }
    }
    for (Seal seal : junction.detail().seals()) {
      if (counted.seals().stream().anyMatch(s -> s.form() == seal.form() && s.place().equals(seal.place()) && s.lengthM() > 0)) {
        asked.add("seal " + seal.id() + (seal.run() == Run.PER_LAP ? " of " + seal.part() : ""));
        assertThat(notes).as(what + ", " + seal.place()).anyMatch(n -> n.contains(seal.place()) && n.contains("; "));
      }
    }
    for (Fastening line : junction.detail().fastenings()) {
      if (counted.fasteners().stream().anyMatch(f -> f.id().equals(line.id()) && f.count() > 0)) {
        asked.add("fastening " + line.id());
        assertThat(notes).as(what + ", " + line.place()).anyMatch(n -> n.contains(line.place() + ":") && n.contains(" pieces"));
      }
    }
    junction.detail().withFaces().forEach(f -> asked.add("face " + f.id()));
    assertThat(groups).as(what).doesNotHaveDuplicates().containsExactlyInAnyOrderElementsOf(asked);
    drawn.elements("g", "drawn").forEach(
        g -> assertThat(g.getChildNodes().getLength()).as(what + ", " + g.getAttribute("data-part")).isGreaterThan(1));
    assertThat(drawn.words()).as(what).doesNotContain("not drawn");
  }
}
