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

  /** Floor and the face of the cut 12 each, sides 2 · (4 + 3) · 1. */
  @Test
  void halfSpaceCutsOffWhatLiesBeyondIt() {
    assertThat(area(new Solid.Difference(BOX, ABOVE_ONE))).isCloseTo(38, within(1e-9));
    assertThat(area(new Solid.Intersection(BOX, BELOW_ONE))).isCloseTo(38, within(1e-9));
    assertThat(area(new Solid.Intersection(BELOW_ONE, BOX))).isCloseTo(38, within(1e-9));
    assertThat(ClippedSurfaces.of(new Solid.Difference(BOX, ABOVE_ONE))).allSatisfy(p -> assertThat(p).allMatch(c -> c.z() <= 1 + 1e-9));
  }

  /** A half-space over the half of the box with x < 2 alone: a step of 1 by 3, so the floor and the steps 12 each, sides less 2 · 2 · 1. */
  @Test
  void boundedHalfSpaceTakesOnlyWhatLiesWithinItsBoundary() {
    Solid step = new Solid.Intersection(Scene.box(-5, -5, -5, 2, 9, 9), ABOVE_ONE);
    double stepped = 12 + 12 + 2 * (4 * 2 - 2) + 3 * 2 + 3 * 1 + 3 * 1;
    assertThat(area(new Solid.Difference(BOX, step))).isCloseTo(stepped, within(1e-6));
    assertThat(ClippedSurfaces.of(new Solid.Difference(BOX, step)))
        .allSatisfy(p -> assertThat(p).noneMatch(c -> c.x() < 2 - 1e-6 && c.z() > 1 + 1e-6));
  }

  /** As a gable wall is written: two bounded half-spaces that overlap beyond the ridge and leave a triangle, 4 wide and 2 high. */
  @Test
  void gableWallIsATriangle() {
    Solid west = new Solid.Intersection(Scene.box(-9, -5, -5, 2, 9, 9), new HalfSpace(Vec3.ZERO, new Vec3(1, 0, -1)));
    Solid east = new Solid.Intersection(Scene.box(2, -5, -5, 9, 9, 9), new HalfSpace(new Vec3(4, 0, 0), new Vec3(-1, 0, -1)));
    double gable = 2 * 4 + 4 * 3 + 2 * Math.hypot(2, 2) * 3;
    assertThat(area(new Solid.Difference(BOX, new Solid.Union(List.of(west, east))))).isCloseTo(gable, within(1e-6));
    assertThat(area(new Solid.Difference(new Solid.Difference(BOX, west), east))).isCloseTo(gable, within(1e-6));
    Solid wide = new Solid.Intersection(Scene.box(-9, -5, -5, 4, 9, 9), new HalfSpace(Vec3.ZERO, new Vec3(1, 0, -1)));
    assertThat(area(new Solid.Difference(BOX, new Solid.Union(List.of(wide, west, east))))).isCloseTo(gable, within(1e-6));
  }

  /** A window of 1 by 1 right through: two faces lose 1 each, four reveals of 1 by 3 come. A tool that only touches takes nothing. */
  @Test
  void openingIsAHoleWithItsReveals() {
    Solid window = Scene.box(1, 0, 0.5, 2, 3, 1.5);
    assertThat(area(new Solid.Difference(BOX, window))).isCloseTo(52 - 2 + 12, within(1e-6));
    Solid outside = Scene.box(4, 0, 0, 5, 3, 2);
    assertThat(area(new Solid.Difference(BOX, outside))).isCloseTo(52, within(1e-6));
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
