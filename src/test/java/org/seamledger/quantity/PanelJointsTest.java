package org.seamledger.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.FixedLine;
import org.seamledger.detail.Joins;
import org.seamledger.export.SectionDrawing;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.finding.Finding;
import org.seamledger.order.OrderLine;
import org.seamledger.order.OrderList;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/**
 * Panels too long for the system, on the gable of 40 by 24 ft at 6:12: 30 panels a side of 144 · √1.25 = 160.997 in, which move by
 * 12·10⁻⁶ · 4.0893 m · 111.1 K = 5.45 mm (α: national code of practice for metal roofs).
 */
class PanelJointsTest {

  private static final double IN = 0.0254;
  private static final double SLOPE = 144 * Math.sqrt(1.25) * IN;

  @TempDir
  private Path folder;

  private Takeoff gable(String system) {
    try {
      Path file = Files.writeString(folder.resolve("s.json"), system);
      return Analysis.run(Inputs.ofFiles(List.of(Counted.SAMPLES.resolve("worked/ridge-40ft.ifc"))).withSystem(Optional.of(file)),
          Progress.NONE);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static List<String> codes(Takeoff takeoff) {
    return takeoff.findings().stream().map(Finding::code).filter(c -> c.startsWith("movement/") || c.startsWith("panel/")).distinct()
        .toList();
  }

  @Test
  void withinTheLimitsNothingIsDivided() {
    assertThat(gable("{}").joints()).isEmpty();
    // 5.45 mm move: 5.5 mm are room enough.
    assertThat(gable("{\"panel\": {\"movementGap\": \"5.5 mm\", \"longest\": \"13.5 ft\"}}").joints()).isEmpty();
    // Hardly any room: the room is wrong, not the panels.
    Takeoff tight = gable("{\"panel\": {\"movementGap\": \"1 mm\"}}");
    assertThat(tight.joints()).isEmpty();
    assertThat(codes(tight)).containsExactly("movement/gap-too-small");
  }

  /** Room of 4.2 mm: two panels where one was, each with a fixed line of its own. */
  @Test
  void aStepPartsPanelsThatMoveTooFar() {
    Takeoff takeoff = gable("{\"panel\": {\"movementGap\": \"4.2 mm\"}}");
    assertThat(takeoff.joints()).hasSize(2).allSatisfy(j -> {
      assertThat(j.junction().kind()).isEqualTo("step-joint");
      assertThat(j.detail().id()).isEqualTo("step-joint");
      assertThat(j.junction().junction().lengthM()).isCloseTo(480 * IN, within(1e-6));
      JunctionQuantities q = takeoff.quantities().byJunction().get(j.junction().junction().id());
      // As at a ridge's one side: 30 pieces of 16 in with 5 fasteners each, 29 seams end.
      assertThat(q.closurePieces()).isEqualTo(30);
      assertThat(Counted.fasteners(q, "closure foot")).isEqualTo(150);
      assertThat(q.seamEndPlugs()).isEqualTo(29);
      // Foot and top of the closures and the cleat: three lines.
      assertThat(Counted.tapeM(q)).isCloseTo(3 * 480 * IN, within(1e-6));
      assertThat(q.fasteners()).noneMatch(r -> r.joins() == Joins.PANEL_DECK);
    });
    List<FixedPanel> panels = takeoff.quantities().fixity().panels();
    assertThat(panels).hasSize(120).allMatch(p -> Math.abs(p.panel().lengthM() - SLOPE / 2) < 1e-6);
    assertThat(panels.stream().filter(p -> p.fixed() == FixedLine.LOW_END)).hasSize(60)
        .allMatch(p -> p.high().kinds().equals(List.of("step-joint")) && p.high().slotM() > 0);
    assertThat(panels.stream().filter(p -> p.fixed() == FixedLine.HIGH_END)).hasSize(60)
        .allMatch(p -> p.low().kinds().equals(List.of("step-joint")));
    assertThat(codes(takeoff)).containsExactly("movement/needs-step");
    // Junctions stay what they were: a face's edges are its perimeter.
    assertThat(takeoff.detailed()).hasSameSizeAs(gable("{}").detailed());
  }

  /** No piece longer than 10 ft: each panel of two, lapped by 6 in; it stays one panel that moves as one. */
  @Test
  void piecesAreLappedWherePanelsAreTooLongToMake() {
    Takeoff takeoff = gable("{\"panel\": {\"longest\": \"10 ft\"}}");
    assertThat(takeoff.joints()).hasSize(2).allSatisfy(j -> {
      assertThat(j.junction().kind()).isEqualTo("end-lap");
      JunctionQuantities q = takeoff.quantities().byJunction().get(j.junction().junction().id());
      assertThat(Counted.tapeM(q)).isCloseTo(2 * 480 * IN, within(1e-6));
      assertThat(Counted.fasteners(q, "end lap")).isEqualTo(2 * 150);
      assertThat(q.metal()).singleElement().satisfies(m -> assertThat(m.pieces()).isEqualTo(30));
    });
    assertThat(takeoff.quantities().fixity().panels()).hasSize(60).allMatch(p -> p.fixed() == FixedLine.LOW_END);
    assertThat(codes(takeoff)).containsExactly("panel/end-lap");
    List<OrderLine> panels = OrderList.of(takeoff).lines().stream().filter(l -> l.id().startsWith("panel:")).toList();
    assertThat(panels).hasSize(2).allSatisfy(l -> {
      assertThat(l.net()).isEqualTo(60);
      // hem 1 + overhang 1 below, lap 6 − setback 1 above
      assertThat(l.measures().get("m")).isCloseTo(30 * (SLOPE + (2 + 5) * IN), within(1e-6));
    });
  }

  @Test
  void drawingsShowBoth() {
    for (String system : List.of("{\"panel\": {\"longest\": \"10 ft\"}}", "{\"panel\": {\"movementGap\": \"4.2 mm\"}}")) {
      Takeoff takeoff = gable(system);
      DetailedJunction joint = takeoff.joints().get(0);
      String svg = SectionDrawing.svg(takeoff, joint.junction().junction().id(), SheetSetup.DEFAULT);
      joint.detail().metal().forEach(m -> assertThat(svg).contains("data-part=\"metal " + m.id() + "\""));
      joint.detail().seals().forEach(s -> assertThat(svg).contains("data-part=\"seal " + s.id()));
      joint.detail().fastenings().forEach(s -> assertThat(svg).contains("data-part=\"fastening " + s.id()));
      joint.detail().withFaces().forEach(s -> assertThat(svg).contains("data-part=\"face " + s.id()));
    }
  }
}
