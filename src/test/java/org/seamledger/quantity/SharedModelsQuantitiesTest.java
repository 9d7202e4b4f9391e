package org.seamledger.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.seamledger.SharedModels;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.finding.Code;
import org.seamledger.quantity.layout.FaceLayout;
import org.seamledger.quantity.layout.Panel;
import org.seamledger.roof.RoofFace;
import org.seamledger.roof.SurfaceLimits;

/** Laws that hold for any roof, on real models. */
@Tag("slow")
class SharedModelsQuantitiesTest {

  @TestFactory
  List<DynamicTest> realRoofs() throws IOException {
    // One of the models is there to be refused.
    return SharedModels.all().stream().filter(m -> !m.getFileName().toString().contains("broken"))
        .map(m -> DynamicTest.dynamicTest(m.getFileName().toString(), () -> check(m))).toList();
  }

  private static void check(Path model) {
    Counted c = Counted.of(model, RoofSystem.DEFAULT);
    for (RoofFace face : c.takeoff().faces()) {
      FaceLayout layout = c.quantities().layout().face(face.id());
      if (layout.panels().isEmpty()) {
        continue;
      }
      // Panels tile the face: what is lost is narrower than anybody cuts.
      double panels = layout.panels().stream().mapToDouble(Panel::areaM2).sum();
      assertThat(panels).as(face.id()).isCloseTo(face.areaM2(), within(0.002 * face.areaM2() + 0.01));
      // Seams stand a coverage apart: their length times the coverage is the area, but for the edges.
      double perimeter = face.perimeterM();
      assertThat(layout.seamLengthM() * layout.coverageM()).as(face.id()).isCloseTo(face.areaM2(), within(perimeter * layout.coverageM()));
    }
    for (DetailedJunction j : c.junctions()) {
      JunctionQuantities q = c.quantities().byJunction().get(j.junction().junction().id());
      double length = j.junction().junction().lengthM();
      q.seals().forEach(s -> assertThat(s.lengthM()).isFinite().isNotNegative());
      Set<String> closures = new TreeSet<>();
      q.closures().forEach(cut -> closures.add(cut.part()));
      // A line may hold a tiny stretch of modelling slack at either end, in whatever direction.
      q.metal().stream().filter(m -> closures.contains(m.part()))
          .forEach(m -> assertThat(m.lengthM()).as(j.junction().kind() + " " + q.junction()).isCloseTo(length,
              within(2 * SurfaceLimits.DEFAULT.stretches().tinyM() + 0.002 * length)));
      q.fasteners().forEach(f -> assertThat(f.spacingM()).as(f.toString()).isLessThanOrEqualTo(18 * 0.0254 + 1e-6));
    }
    assertThat(c.quantities().findings()).noneMatch(f -> f.code().equals(Code.CLOSURES_MISMATCH.id()));
    DesignFacts facts = new DesignFacts(c.junctions(), List.of(), c.quantities(), c.takeoff().drainage(), BelowRoof.NONE);
    c.junctions().forEach(
        j -> assertThat(facts.junction(j).values()).allSatisfy(v -> assertThat(v instanceof Double d && !Double.isFinite(d)).isFalse()));
  }
}
