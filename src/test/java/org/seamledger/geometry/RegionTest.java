package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Areas, outlines and distances of rectangles and triangles, by the formulas of plane geometry. */
class RegionTest {

  private static final Region TEN = Region.rectangle(0, 0, 10, 10);

  @Test
  void overlaysOfTwoRectangles() {
    Region other = Region.rectangle(6, 7, 12, 12);
    assertThat(TEN.intersect(other).area()).isCloseTo(4 * 3, within(1e-9));
    assertThat(TEN.union(other).area()).isCloseTo(100 + 30 - 12, within(1e-9));
    assertThat(TEN.minus(other).area()).isCloseTo(100 - 12, within(1e-9));
    assertThat(Region.unionOf(List.of(TEN, other, Region.EMPTY)).area()).isCloseTo(118, within(1e-9));
  }

  @Test
  void whatOnlyTouchesHasNoCommonArea() {
    Region beside = Region.rectangle(10, 0, 12, 10);
    assertThat(TEN.touches(beside)).isTrue();
    assertThat(TEN.intersect(beside).isEmpty()).isTrue();
    assertThat(TEN.union(beside).parts()).hasSize(1);
    assertThat(TEN.union(beside).perimeter()).isCloseTo(44, within(1e-9));
  }

  @Test
  void ringInsideRingIsAHole() {
    Region frame = Region.evenOdd(List.of(square(0, 10), square(4, 6)));
    assertThat(frame.area()).isCloseTo(96, within(1e-9));
    assertThat(frame.perimeter()).isCloseTo(48, within(1e-9));
    assertThat(frame.filled().area()).isCloseTo(100, within(1e-9));
    assertThat(frame.contains(new Vec2(5, 5))).isFalse();
    assertThat(frame.rings()).extracting(Region.Ring::hole).containsExactly(false, true);
    assertThat(frame.rings()).allSatisfy(r -> assertThat(signedArea(r) > 0).isEqualTo(!r.hole()));
    assertThat(frame.contains(frame.interiorPoint())).isTrue();
    assertThat(frame.boundaryDistance(new Vec2(3, 5))).isCloseTo(1, within(1e-12));
  }

  /** A bow tie: two triangles of base 10 and height 5, by the even-odd rule. */
  @Test
  void aLineThatCrossesItselfIsMended() {
    Region bow = Region.polygon(List.of(new Vec2(0, 0), new Vec2(10, 10), new Vec2(10, 0), new Vec2(0, 10)));
    assertThat(bow.area()).isCloseTo(2 * 10 * 5 / 2.0, within(1e-6));
    assertThat(bow.parts()).hasSize(2);
  }

  @Test
  void degenerateLinesAreEmpty() {
    assertThat(Region.polygon(List.of(new Vec2(0, 0), new Vec2(1, 1))).isEmpty()).isTrue();
    assertThat(Region.polygon(List.of(new Vec2(0, 0), new Vec2(1, 1), new Vec2(2, 2))).isEmpty()).isTrue();
    assertThat(Region.rectangle(0, 0, 5, 0).isEmpty()).isTrue();
    assertThat(Region.EMPTY.distance(TEN)).isInfinite();
    assertThat(Region.EMPTY.minus(TEN).union(Region.EMPTY).rings()).isEmpty();
  }

  /** u + v &lt; 5 leaves a right triangle with legs of 5. */
  @Test
  void cutByAHalfPlane() {
    assertThat(TEN.cut(1, 1, 5).area()).isCloseTo(12.5, within(1e-6));
    assertThat(TEN.cut(1, 0, 20)).isSameAs(TEN);
    assertThat(TEN.cut(1, 0, -1).isEmpty()).isTrue();
  }

  @Test
  void grownAndShrunkKeepSharpCorners() {
    assertThat(TEN.grown(1).area()).isCloseTo(144, within(1e-6));
    assertThat(TEN.grown(-1).area()).isCloseTo(64, within(1e-6));
    assertThat(TEN.grown(-5.1).isEmpty()).isTrue();
    assertThat(Region.rectangle(0, 0, 10, 0.5).isNarrowerThan(0.51)).isTrue();
    assertThat(Region.rectangle(0, 0, 10, 0.5).isNarrowerThan(0.49)).isFalse();
  }

  @Test
  void simplifiedLosesFlatCornersAndSpikesOnly() {
    Region bumpy = Region.polygon(List.of(new Vec2(0, 0), new Vec2(5, -1e-5), new Vec2(10, 0), new Vec2(10, 10), new Vec2(0, 10)));
    assertThat(bumpy.simplified(2e-5).rings().get(0).points()).hasSize(4);
    assertThat(bumpy.simplified(5e-6).rings().get(0).points()).hasSize(5);
    Region spiked = Region.polygon(List.of(new Vec2(0, 0), new Vec2(10, 0), new Vec2(10, 5), new Vec2(13, 5), new Vec2(10, 5.00001),
        new Vec2(10, 10), new Vec2(0, 10)));
    assertThat(spiked.maxU()).isEqualTo(13);
    assertThat(spiked.simplified(2e-5).maxU()).isCloseTo(10, within(1e-4));
  }

  /** Straight down on to a plane at 60°, 10 m of plan are 10 / cos 60° = 20 m of slope. */
  @Test
  void projectedPlumbOnToASlope() {
    Plane level = Plane.through(Vec3.ZERO, Vec3.Z);
    Plane steep = Plane.through(Vec3.ZERO, new Vec3(0, -Math.sin(Math.toRadians(60)), Math.cos(Math.toRadians(60))));
    Region there = TEN.projected(level, steep, Vec3.Z);
    assertThat(there.area()).isCloseTo(200, within(1e-4));
    assertThat(there.projected(steep, level, Vec3.Z).area()).isCloseTo(100, within(1e-4));
  }

  private static List<Vec2> square(double from, double to) {
    return List.of(new Vec2(from, from), new Vec2(to, from), new Vec2(to, to), new Vec2(from, to));
  }

  private static double signedArea(Region.Ring ring) {
    double twice = 0;
    for (int i = 0; i < ring.points().size(); i++) {
      twice += ring.points().get(i).cross(ring.points().get((i + 1) % ring.points().size()));
    }
    return twice / 2;
  }
}
