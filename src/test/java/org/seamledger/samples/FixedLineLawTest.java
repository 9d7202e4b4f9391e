package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.seamledger.SharedModels;
import org.seamledger.detail.FixedLine;
import org.seamledger.detail.Joins;
import org.seamledger.quantity.FixedPanel;
import org.seamledger.takeoff.Takeoff;

/**
 * In every model each panel has exactly one fixed line, at which it doesn't move while its free ends do, or a finding names it; panels are
 * joined to the deck at lines where some are fixed, and at no other.
 */
@Tag("slow")
class FixedLineLawTest {

  @TestFactory
  List<DynamicTest> samples() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("ifc-samples"))) {
      return tests(files.filter(f -> f.toString().endsWith(".ifc")).sorted().toList());
    }
  }

  @Test
  void realModels() throws Throwable {
    for (DynamicTest test : tests(SharedModels.all().stream().filter(f -> !f.getFileName().toString().startsWith("d14")).toList())) {
      test.getExecutable().execute();
    }
  }

  private static List<DynamicTest> tests(List<Path> models) {
    return models.stream().map(f -> DynamicTest.dynamicTest(f.toString(), () -> check(Pipeline.analyse(f), f.toString()))).toList();
  }

  private static void check(Takeoff takeoff, String model) {
    List<FixedPanel> panels = takeoff.quantities().fixity().panels();
    int laid = takeoff.faces().stream().mapToInt(f -> takeoff.quantities().layout().face(f.id()).panels().size()).sum();
    assertThat(panels).as(model).hasSize(laid);
    Set<String> fixedAt = new TreeSet<>();
    List<String> named = new ArrayList<>();
    takeoff.findings().stream().filter(f -> List.of("movement/no-fixed-line", "movement/two-fixed-lines").contains(f.code()))
        .forEach(f -> named.add(f.message()));
    for (FixedPanel p : panels) {
      String what = model + ", pan " + p.panel().pan() + " of " + p.face();
      if (p.ruled().size() != 1) {
        assertThat(p.fixed()).as(what).isEqualTo(FixedLine.NONE);
        assertThat(named).as(what)
            .anyMatch(m -> m.startsWith("panels of " + p.face() + " ") && m.contains("pan " + p.panel().pan() + " of "));
        continue;
      }
      assertThat(p.fixed()).as(what).isEqualTo(p.ruled().get(0)).isNotEqualTo(FixedLine.NONE);
      assertThat(p.low().movementM() > 0).as(what).isEqualTo(p.fixed() != FixedLine.LOW_END);
      assertThat(p.high().movementM() > 0).as(what).isEqualTo(p.fixed() != FixedLine.HIGH_END);
      fixedAt.addAll(p.fixed() == FixedLine.LOW_END ? p.low().junctions() : p.fixed() == FixedLine.HIGH_END ? p.high().junctions()
          : List.of());
    }
    Set<String> joined = takeoff.quantities().byJunction().values().stream()
        .filter(q -> q.fasteners().stream().anyMatch(f -> f.joins() == Joins.PANEL_DECK && f.count() > 0)).map(q -> q.junction())
        .collect(Collectors.toSet());
    assertThat(fixedAt).as(model).containsAll(joined);
  }
}
