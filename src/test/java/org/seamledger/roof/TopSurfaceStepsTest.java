package org.seamledger.roof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamledger.roof.Steps.LIMITS;
import static org.seamledger.roof.Steps.TOLERANCE;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Scene;
import org.seamledger.progress.Progress;

/** Each step from planes to top surface by itself: areas of boxes and slabs in closed form. */
class TopSurfaceStepsTest {

  private static final Vec3 PLUMB = new Vec3(0, 0, -0.2);

  private static Scene level(String id, double x0, double x1, double z) {
    return add(new Scene(), id, x0, x1, z);
  }

  private static Scene add(Scene scene, String id, double x0, double x1, double z) {
    return scene.slab(id, PLUMB, x0, 0, z, x1, 0, z, x1, 4, z, x0, 4, z);
  }

  // ---- planes

  private static List<SurfacePlanes.Carried> planes(Scene scene) {
    return SurfacePlanes.of(Steps.parts(scene), TOLERANCE, LIMITS).planes();
  }

  @Test
  void topsWithinTheCoincidenceAreOnePlane() {
    List<SurfacePlanes.Carried> planes = planes(add(level("a", 0, 6, 3), "b", 7, 9, 3.001));
    assertThat(planes).as("top and underside").hasSize(2);
    assertThat(planes).allSatisfy(p -> assertThat(p.carriers()).hasSize(2));
    assertThat(planes(add(level("a", 0, 6, 3), "b", 7, 9, 3.01))).hasSize(4);
  }

  @ParameterizedTest
  @CsvSource({"84, 2", "86, 0"})
  void nearlyVerticalPlanesCarryNothing(double degrees, int expected) {
    double c = Math.cos(Math.toRadians(degrees));
    double s = Math.sin(Math.toRadians(degrees));
    Scene scene = new Scene().slab("steep", new Vec3(s, 0, -c).times(0.2), 0, 0, 0, 0, 4, 0, 2 * c, 4, 2 * s, 2 * c, 0, 2 * s);
    long steep = planes(scene).stream().filter(p -> p.plane().slopeDegrees() > 80).count();
    assertThat(steep).isEqualTo(expected);
  }

  // ---- own surface

  @Test
  void ownSurfaceIsTheTopAlone() {
    List<TopSurface> own = Steps.ownSurface(level("a", 0, 6, 3));
    assertThat(own).singleElement().satisfies(t -> {
      assertThat(t.plane().distance()).isCloseTo(3, within(1e-9));
      assertThat(t.own().area()).isCloseTo(24, within(1e-6));
    });
    assertThat(Steps.ownSurface(new Scene())).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0.04, 1", "0.06, 2"})
  void piecesOfOnePlaneAreBridgedAcrossTheGap(double gap, int pieces) {
    assertThat(Steps.ownSurface(add(level("a", 0, 6, 3), "b", 6 + gap, 9, 3))).singleElement()
        .satisfies(t -> assertThat(t.own().parts()).hasSize(pieces));
  }

  // ---- relief

  private static Mesh ribbed(int ribs) {
    List<Vec3> section = new ArrayList<>();
    for (int i = 0; i < ribs; i++) {
      double x = i * 0.25;
      section.addAll(Scene.points(x, 0, 3, x + 0.06, 0, 3, x + 0.08, 0, 2.97, x + 0.23, 0, 2.97));
    }
    double width = ribs * 0.25;
    section.add(new Vec3(width, 0, 3));
    section.addAll(Scene.points(width, 0, 2.9, 0, 0, 2.9));
    Collections.reverse(section);
    return Scene.prism(section, new Vec3(0, 4, 1));
  }

  /** Crests lie in z = 3 + y / 4. */
  @Test
  void ribsGetThePlaneOfTheirCrests() {
    List<TopSurface> flat =
        Relief.flattened(Steps.ownSurface(new Scene().roof("sheet", List.of(ribbed(24)))), Steps.NO_CURVES, LIMITS.relief());
    assertThat(flat).singleElement().satisfies(t -> {
      assertThat(t.plane().elevation(3, 2)).isCloseTo(3.5, within(1e-3));
      assertThat(t.plane().slopeDegrees()).isCloseTo(Math.toDegrees(Math.atan(0.25)), within(0.05));
      assertThat(t.own().area()).isCloseTo(6 * Math.hypot(4, 1), within(0.01));
    });
  }

  @Test
  void fewRibsStayWhatTheyAre() {
    List<TopSurface> tops = Steps.ownSurface(new Scene().roof("sheet", List.of(ribbed(2))));
    assertThat(Relief.flattened(tops, Steps.NO_CURVES, LIMITS.relief())).isSameAs(tops);
    assertThat(Relief.flattened(List.of(), Steps.NO_CURVES, LIMITS.relief())).isEmpty();
  }

  /** A vault of 15 strips over 6 m, 0.14 m high: only its middle comes near the plane over it. */
  @Test
  void aShallowVaultIsNoRelief() {
    List<Vec3> section = new ArrayList<>();
    for (int i = 0; i <= 15; i++) {
      double x = i * 0.4;
      section.add(new Vec3(x, 0, 3 + 0.14 * (1 - (x - 3) * (x - 3) / 9)));
    }
    section.addAll(Scene.points(6, 0, 2.8, 0, 0, 2.8));
    Collections.reverse(section);
    List<TopSurface> tops = Steps.ownSurface(new Scene().roof("vault", List.of(Scene.prism(section, new Vec3(0, 4, 0)))));
    assertThat(Relief.flattened(tops, Steps.NO_CURVES, LIMITS.relief())).hasSize(15);
  }

  // ---- counted once

  @Test
  void whatTwoPlanesCarryTogetherCountsOnce() {
    TopSurface large = Steps.surface(Steps.LEVEL, Region.rectangle(0, 0, 10, 10));
    TopSurface small = Steps.surface(Steps.LEVEL.moved(0.001), Region.rectangle(8, 0, 12, 10));
    List<TopSurface> once = CountedOnce.of(List.of(small, large), TOLERANCE, LIMITS.tops());
    assertThat(once).extracting(t -> Math.rint(t.own().area())).containsExactly(20.0, 100.0);
    assertThat(CountedOnce.of(List.of(large, large), TOLERANCE, LIMITS.tops())).hasSize(1);
    TopSurface above = Steps.surface(Steps.LEVEL.moved(0.01), Region.rectangle(8, 0, 12, 10));
    assertThat(Steps.area(CountedOnce.of(List.of(large, above), TOLERANCE, LIMITS.tops()))).isCloseTo(140, within(1e-6));
  }

  // ---- cut edges

  /** A slab at 45° cut square: its lower end faces down, its upper end, turned by 90°, up. */
  @Test
  void theUpperEndOfASquareCutSlabIsNoRoof() {
    Scene scene = new Scene().slab("a", new Vec3(0.2, 0, -0.2), 0, 0, 0, 0, 4, 0, 3, 4, 3, 3, 0, 3);
    List<TopSurface> own = Steps.ownSurface(scene.slab("b", PLUMB, 20, 0, 0, 21, 0, 0, 21, 1, 0, 20, 1, 0));
    double face = 4 * 3 * Math.sqrt(2);
    double end = 4 * 0.2 * Math.sqrt(2);
    assertThat(Steps.area(own)).isCloseTo(face + end + 1, within(1e-3));
    List<TopSurface> kept =
        new CutEdges(Steps.own(), new Thickness(Tolerance.DEFAULT, LIMITS.tops()), Tolerance.DEFAULT, LIMITS.tops())
            .dropped(own, Progress.NONE);
    assertThat(Steps.area(kept)).isCloseTo(face + 1, within(1e-3));
  }

  // ---- layers

  @ParameterizedTest
  @CsvSource({"0.5, 6, 24", "0.7, 6, 48", "0.5, 3, 36", "0.5, 4, 16"})
  void ofLayersWithinABuildUpTheOuterCounts(double above, double width, double expected) {
    List<TopSurface> own = Steps.ownSurface(add(level("under", 0, 6, 3), "over", 0, width, 3 + above));
    List<TopSurface> outer = new OuterLayers(Steps.own(), TOLERANCE, LIMITS.tops()).of(own, Progress.NONE);
    assertThat(Steps.area(outer)).isCloseTo(expected, within(1e-3));
  }

  // ---- covering

  @Test
  void aBodyOnASurfaceIsNotFree() {
    Scene scene = level("roof", 0, 6, 3).roof("box", List.of(Scene.box(2, 1, 3, 3, 3, 5)));
    TopSurface top = Steps.tops(scene).stream().filter(t -> Math.abs(t.plane().distance() - 3) < 1e-6).findFirst().orElseThrow();
    assertThat(top.free().area()).isCloseTo(24 - 2, within(1e-3));
    assertThat(top.crossing()).extracting(p -> p.part().id()).containsExactly("box");
  }

  // ---- thickness

  @ParameterizedTest
  @CsvSource({"0.2, 0.2", "1.1, 1.1", "1.3, 0"})
  void thicknessIsThatOfASlabOrNone(double depth, double expected) {
    Scene scene = new Scene().slab("a", new Vec3(0, 0, -depth), 0, 0, 3, 6, 0, 3, 6, 4, 3, 0, 4, 3);
    Plane top = Plane.through(new Vec3(0, 0, 3), Vec3.Z);
    Part part = Steps.parts(scene).get(0);
    assertThat(new Thickness(Tolerance.DEFAULT, LIMITS.tops()).below(part, top, Region.rectangle(0, 0, 6, 4))).isCloseTo(expected,
        within(1e-9));
    assertThat(new Thickness(Tolerance.DEFAULT, LIMITS.tops()).below(part, top, Region.rectangle(7, 0, 9, 4))).as("beside it").isZero();
  }
}
