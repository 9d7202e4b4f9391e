package org.seamledger.roof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Scene;

/** Facets that become faces, and limits that are arguments. */
class RoofBuilderTest {

  private static final Vec3 PLUMB = new Vec3(0, 0, -0.2);

  /** Two slabs 4 m and 3 m wide side by side, the second turned about their common edge. */
  private static Scene turned(double degrees) {
    double rise = 3 * Math.tan(Math.toRadians(degrees));
    return new Scene().slab("a", PLUMB, 0, 0, 3, 4, 0, 3, 4, 5, 3, 0, 5, 3)
        .slab("b", PLUMB, 4, 0, 3, 7, 0, 3 + rise, 7, 5, 3 + rise, 4, 5, 3);
  }

  @ParameterizedTest
  @CsvSource({"0, 1", "0.9, 1", "1.1, 2", "30, 2"})
  void facetsThatTurnLittleAreOneFlatFace(double degrees, int faces) {
    Roof roof = turned(degrees).build();
    assertThat(roof.faces()).hasSize(faces).noneMatch(RoofFace::isCurved);
    double sloped = 3 / Math.cos(Math.toRadians(degrees));
    assertThat(roof.faces().stream().mapToDouble(RoofFace::areaM2).sum()).isCloseTo(5 * (4 + sloped), within(1e-3));
    if (faces == 1) {
      assertThat(roof.faces().get(0).perimeterM()).as("no outline inside the face").isCloseTo(2 * (5 + 4 + sloped), within(1e-3));
    }
  }

  @Test
  void orderOfTheElementsDoesNotMatter() {
    Roof one = turned(30).build();
    Scene other = new Scene().slab("b", PLUMB, 4, 0, 3, 7, 0, 3 + 3 * Math.tan(Math.PI / 6), 7, 5, 3 + 3 * Math.tan(Math.PI / 6), 4, 5, 3)
        .slab("a", PLUMB, 0, 0, 3, 4, 0, 3, 4, 5, 3, 0, 5, 3);
    assertThat(other.build().faces()).extracting(RoofFace::id, RoofFace::elements)
        .isEqualTo(one.faces().stream().map(f -> org.assertj.core.api.Assertions.tuple(f.id(), f.elements())).toList());
  }

  @Test
  void limitsAreArguments() {
    SurfaceLimits d = SurfaceLimits.DEFAULT;
    SurfaceLimits stricter = new SurfaceLimits(d.planes(), d.tops(), d.relief(), d.exposed(), d.obstacles(), d.penetrations(), d.folds(),
        d.stretches(), new SurfaceLimits.Faces(1, 2e-5, 0.5, 2, 0.6, 6, 0.1, 0.1, 3, 16, 0.2), d.covered(), d.lines());
    assertThat(turned(0.9).build(stricter).faces()).hasSize(2);
    assertThat(turned(0.9).build(stricter).limits()).isSameAs(stricter);
  }

  @Test
  void everyLimitIsShownByItsName() {
    Map<String, Map<String, Double>> all = SurfaceLimits.DEFAULT.byName();
    assertThat(all.keySet()).startsWith("planes", "tops").endsWith("lines");
    assertThat(all.get("stretches")).containsEntry("tinyM", 0.031);
    assertThat(all.values()).allSatisfy(group -> assertThat(group).isNotEmpty()
        .allSatisfy((name, value) -> assertThat(value).isPositive()));
  }

  @Test
  void noRoofHasNoFace() {
    assertThat(new Scene().build().faces()).isEmpty();
    assertThat(new Scene().wall("wall", 0, 0, 0, 4, 0.3, 3).build().edges()).isEmpty();
  }
}
