package org.seamledger.roof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamledger.element.Building;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Scene;
import org.seamledger.progress.Progress;

/** Areas of slabs in closed form, and roofs from which a face was taken. */
class CoverageCheckTest {

  private static final Vec3 PLUMB = new Vec3(0, 0, -0.2);

  private static Building building(Scene scene) {
    return new Building(List.of(), scene.roofs(), scene.neighbours(), Vec3.ZERO, List.of());
  }

  private static Roof roof(Building building) {
    return RoofBuilder.build(building, Tolerance.DEFAULT, SurfaceLimits.DEFAULT, Progress.NONE);
  }

  private static ElementCoverage of(Scene scene, String id) {
    Building b = building(scene);
    return CoverageCheck.of(b, roof(b)).stream().filter(c -> c.globalId().equals(id)).findFirst().orElseThrow();
  }

  private static Scene level(String id, double x0, double x1, double z) {
    return add(new Scene(), id, x0, x1, z);
  }

  private static Scene add(Scene scene, String id, double x0, double x1, double z) {
    return scene.slab(id, PLUMB, x0, 0, z, x1, 0, z, x1, 4, z, x0, 4, z);
  }

  private static double sum(ElementCoverage c) {
    return c.inFacesM2() + c.coveredM2() + c.innerLayerM2() + c.enclosedM2() + c.voidM2() + c.cutEdgeM2() + c.tooSmallM2() + c.lostM2();
  }

  @Test
  void aSlabIsInItsFace() {
    ElementCoverage c = of(level("a", 0, 6, 3), "a");
    assertThat(c.upwardM2()).isCloseTo(24, within(1e-6));
    assertThat(c.inFacesM2()).isCloseTo(24, within(1e-6));
    assertThat(c.readable()).isTrue();
  }

  @Test
  void whatStandsOnItAndWhatLiesOverItHaveTheirNames() {
    ElementCoverage walled = of(level("a", 0, 6, 3).wall("wall", 0, 0, 2, 0.3, 4, 5), "a");
    assertThat(walled.coveredM2()).isCloseTo(0.3 * 4, within(1e-3));
    assertThat(walled.coveredBy()).containsExactly("wall");
    assertThat(sum(walled)).isCloseTo(24, within(1e-6));
    ElementCoverage inner = of(add(level("under", 0, 6, 3), "over", 0, 5, 3.3), "under");
    assertThat(inner.innerLayerM2()).isCloseTo(20, within(1e-3));
    assertThat(sum(inner)).isCloseTo(24, within(1e-6));
  }

  /** The roof's stages are right here; a face that they had dropped has to be missed. */
  @Test
  void aFaceThatIsTakenAwayIsLost() {
    Building b = building(add(level("a", 0, 6, 3), "b", 10, 13, 3.5));
    Roof all = roof(b);
    assertThat(CoverageCheck.findings(CoverageCheck.of(b, all), all)).isEmpty();
    Roof less = without(all, List.of(all.faces().get(0)));
    List<ElementCoverage> coverage = CoverageCheck.of(b, less);
    assertThat(coverage.stream().mapToDouble(ElementCoverage::lostM2).sum()).isCloseTo(12, within(1e-6));
    List<Finding> findings = CoverageCheck.findings(coverage, less);
    assertThat(findings).extracting(Finding::code).containsExactly(Code.NO_FACE.id());
    assertThat(findings.get(0).elements()).containsExactly("b");
  }

  private static Roof without(Roof roof, List<RoofFace> kept) {
    return new Roof(kept, roof.facets(), roof.faceOfFacet(), roof.edges(), roof.tolerance(), roof.limits());
  }

  @Test
  void noFaceAtAllIsAFindingOfItsOwn() {
    Building b = building(level("a", 0, 6, 3));
    Roof none = without(roof(b), List.of());
    assertThat(CoverageCheck.findings(CoverageCheck.of(b, none), none)).extracting(Finding::code)
        .containsExactly(Code.NO_FACE.id());
    Building empty = building(new Scene());
    assertThat(CoverageCheck.of(empty, roof(empty))).isEmpty();
  }
}
