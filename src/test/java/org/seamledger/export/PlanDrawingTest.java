package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.SharedModels;
import org.seamledger.detail.Details;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.shacl.Rules;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;
import org.w3c.dom.Element;

class PlanDrawingTest {

  /** A micrometre on paper at each end. */
  private static final double ROUNDING = 0.002;

  private static Takeoff sample(String name) {
    return Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples", name + ".ifc"))), Progress.NONE);
  }

  /** Of all sheets. */
  private static String allWords(Takeoff takeoff) {
    StringBuilder words = new StringBuilder();
    PlanDrawing.sheets(takeoff, SheetSetup.DEFAULT).forEach(s -> words.append(Drawn.parse(s).words()));
    return words.toString();
  }

  private static double planLengthM(Junction junction) {
    double sum = 0;
    for (int i = 1; i < junction.path().size(); i++) {
      Vec3 d = junction.path().get(i).minus(junction.path().get(i - 1));
      sum += d.planLength();
    }
    return sum;
  }

  @ParameterizedTest
  @ValueSource(strings = {"gatehouse", "school"})
  void everyJunctionIsDrawnToScaleAndLabelledOrListed(String name) {
    Takeoff takeoff = sample(name);
    Drawn plan = Drawn.parse(PlanDrawing.sheets(takeoff, SheetSetup.DEFAULT).get(0));
    List<Element> lines = plan.elements("polyline", "junction");
    assertThat(lines).hasSameSizeAs(takeoff.junctions());
    double drawn = 0;
    double asked = 0;
    String words = allWords(takeoff);
    for (int i = 0; i < lines.size(); i++) {
      Junction junction = takeoff.junctions().get(i).junction();
      assertThat(lines.get(i).getAttribute("data-id")).isEqualTo(junction.id());
      double length = Drawn.length(Drawn.points(lines.get(i))) * plan.denominator() / 1000;
      assertThat(length).isCloseTo(planLengthM(junction), within(ROUNDING * junction.path().size() * plan.denominator() / 1000));
      drawn += length;
      asked += planLengthM(junction);
      assertThat(words).contains(junction.id().substring(0, 4), MeasureFormat.formatMetres(junction.lengthM()));
    }
    assertThat(drawn).isCloseTo(asked, within(0.001 * asked));
    takeoff.faces().forEach(f -> assertThat(words).contains(f.id() + " · "));
    assertThat(words).contains("model north", "Scale 1:", "govern", name + ".ifc");
    assertThat(plan.elements("line", "seam").size()).isGreaterThan(20);
  }

  /** The gatehouse's plan is 10 m by 7 m, its ridge lies along X: see ifc-samples. */
  @Test
  void upOnPaperIsTheModelsNorth() {
    Takeoff takeoff = sample("gatehouse");
    Drawn plan = Drawn.parse(PlanDrawing.sheets(takeoff, SheetSetup.DEFAULT).get(0));
    Vec3 from = takeoff.junctions().get(0).junction().path().get(0);
    for (int i = 0; i < takeoff.junctions().size(); i++) {
      Vec3 p = takeoff.junctions().get(i).junction().path().get(0).minus(from);
      var q = Drawn.points(plan.elements("polyline", "junction").get(i)).get(0)
          .minus(Drawn.points(plan.elements("polyline", "junction").get(0)).get(0));
      assertThat(q.u() * plan.denominator() / 1000).isCloseTo(p.x(), within(0.001));
      assertThat(-q.v() * plan.denominator() / 1000).isCloseTo(p.y(), within(0.001));
    }
  }

  @Test
  void namesStayWords() {
    Takeoff takeoff = DetailScenes.of(new Details(Rules.packaged()).book().get("hip"), RoofSystem.DEFAULT);
    Drawn plan = Drawn.parse(PlanDrawing.sheets(takeoff, SheetSetup.DEFAULT).get(0));
    plan.isHarmless();
    assertThat(plan.words()).contains("a \"model\" <b>.ifc");
  }

  /** The model has faces of which nothing is left in plan: they have no middle from which an arrow could start. */
  @Test
  void arrowsOfWaterStartWhereThereIsAnArea() throws IOException {
    Takeoff takeoff = Analysis.run(Inputs.ofFiles(List.of(SharedModels.named("d06"))), Progress.NONE);
    assertThat(takeoff.drainage().catchments()).isNotEmpty();
    PlanDrawing.sheets(takeoff, SheetSetup.DEFAULT).forEach(sheet -> assertThat(sheet).doesNotContain("NaN", "Infinity"));
    assertThat(Drawn.parse(PlanDrawing.sheets(takeoff, SheetSetup.DEFAULT).get(0)).elements("path", "water")).isNotEmpty();
  }

  @Test
  void theSameTakeoffGivesTheSameText() {
    assertThat(PlanDrawing.sheets(Takeoffs.boatHouse(), SheetSetup.DEFAULT).get(0))
        .isEqualTo(PlanDrawing.sheets(Takeoffs.boatHouse(), SheetSetup.DEFAULT).get(0));
  }
}
