package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Distances by Pythagoras, 3-4-5 and 2-3-6-7. */
class SegmentTest {

  private static final Segment TEN = new Segment(Vec3.ZERO, new Vec3(10, 0, 0));

  @Test
  void nearestPointIsBesideOrAnEnd() {
    assertThat(TEN.distance(new Vec3(4, 3, 4))).isCloseTo(5, within(1e-12));
    assertThat(TEN.distance(new Vec3(-2, 3, 6))).isCloseTo(7, within(1e-12));
    assertThat(TEN.distance(new Vec3(12, 3, 6))).isCloseTo(7, within(1e-12));
    assertThat(Segment.distance(new Vec2(13, 4), new Vec2(0, 0), new Vec2(10, 0))).isCloseTo(5, within(1e-12));
  }

  @Test
  void oneOfNoLengthIsItsPoint() {
    assertThat(new Segment(Vec3.X, Vec3.X).distance(new Vec3(1, 3, 4))).isCloseTo(5, within(1e-12));
    assertThat(Segment.distance(new Vec2(3, 4), new Vec2(0, 0), new Vec2(0, 0))).isCloseTo(5, within(1e-12));
  }

  @Test
  void pathsAreAsFarAsTheirNearestStretches() {
    List<Segment> path = Segment.of(List.of(new Vec3(0, 9, 0), new Vec3(5, 2, 0), new Vec3(10, 9, 0)));
    assertThat(path).hasSize(2);
    assertThat(Segment.distance(List.of(TEN), path)).isCloseTo(2, within(1e-12));
    assertThat(Segment.distance(List.of(TEN), Segment.of(List.of(Vec3.ZERO)))).isInfinite();
  }
}
