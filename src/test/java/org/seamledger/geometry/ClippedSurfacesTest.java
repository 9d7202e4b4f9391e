package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamledger.junction.Scene;

/** Areas of what is left of a box 4 × 3 × 2 m, in closed form. */
class ClippedSurfacesTest {

  private static final Mesh BOX = Scene.box(0, 0, 0, 4, 3, 2);
  private static final HalfSpace ABOVE_ONE = new HalfSpace(new Vec3(0, 0, 1), new Vec3(0, 0, -1));
  private static final HalfSpace BELOW_ONE = new HalfSpace(new Vec3(0, 0, 1), Vec3.Z);

  private static double area(Solid solid) {
    return ClippedSurfaces.of(solid).stream().mapToDouble(ClippedSurfacesTest::area).sum();
  }

  private static double area(List<Vec3> polygon) {
    Vec3 twice = Vec3.ZERO;
    for (int i = 2; i < polygon.size(); i++) {
      twice = twice.plus(polygon.get(i - 1).minus(polygon.get(0)).cross(polygon.get(i).minus(polygon.get(0))));
    }
    return twice.distance(Vec3.ZERO) / 2;
  }

  @Test
  void wholeBodyHasItsWholeSurface() {
    assertThat(area(BOX)).isCloseTo(2 * (4 * 3 + 4 * 2 + 3 * 2), within(1e-9));
    assertThat(area(new Solid.Union(List.of(BOX, BOX)))).isCloseTo(2 * 52, within(1e-9));
  }

  /** Floor 12, sides 2 · (4 + 3) · 1; the cut stays open. */
  @Test
  void halfSpaceCutsOffWhatLiesBeyondIt() {
    assertThat(area(new Solid.Difference(BOX, ABOVE_ONE))).isCloseTo(26, within(1e-9));
    assertThat(area(new Solid.Intersection(BOX, BELOW_ONE))).isCloseTo(26, within(1e-9));
    assertThat(area(new Solid.Intersection(BELOW_ONE, BOX))).isCloseTo(26, within(1e-9));
    assertThat(ClippedSurfaces.of(new Solid.Difference(BOX, ABOVE_ONE))).allSatisfy(p -> assertThat(p).allMatch(c -> c.z() <= 1 + 1e-9));
  }

  @Test
  void planeThroughACornerOrBesideTheBodyTakesNothing() {
    HalfSpace touching = new HalfSpace(new Vec3(0, 0, 2), new Vec3(0, 0, -1));
    assertThat(area(new Solid.Difference(BOX, touching))).isCloseTo(52, within(1e-9));
    HalfSpace everything = new HalfSpace(new Vec3(0, 0, -1), new Vec3(0, 0, -1));
    assertThat(ClippedSurfaces.of(new Solid.Difference(BOX, everything))).isEmpty();
    assertThat(ClippedSurfaces.of(everything)).as("a half-space alone has no bounded surface").isEmpty();
  }
}
