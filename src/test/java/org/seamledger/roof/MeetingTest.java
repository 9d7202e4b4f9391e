package org.seamledger.roof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamledger.roof.Steps.LIMITS;
import static org.seamledger.roof.Steps.TOLERANCE;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Progress;

/** Two slopes of 45° whose planes meet in the ridge x = 0, z = 0; in the frame of each, v runs up the slope and is 0 at the ridge. */
class MeetingTest {

  private static final Plane WEST = Plane.through(Vec3.ZERO, new Vec3(-1, 0, 1));
  private static final Plane EAST = Plane.through(Vec3.ZERO, new Vec3(1, 0, 1));
  private static final double THICK = 0.2;

  private static List<ExposedFacet> met(ExposedFacet... facets) {
    return Meeting.of(List.of(facets), Steps.NO_CURVES, TOLERANCE, LIMITS.folds(), Progress.NONE);
  }

  /** 10 m along the ridge, from 5 m down the slope up to {@code top}; u runs along y, its sense by the slope. */
  private static ExposedFacet slope(Plane plane, double top) {
    double at = plane.u(new Vec3(0, 10, 0));
    return Steps.facet(plane, Region.rectangle(Math.min(0, at), -5, Math.max(0, at), top), THICK);
  }

  /** Slabs cut square at a fold of 90° end t·tan 45° = t short of the ridge; some models run a little beyond it. */
  @ParameterizedTest
  @CsvSource({"-0.2", "-0.24", "0.1", "-0.01"})
  void edgesNearTheRidgeAreMovedOnToIt(double top) {
    for (ExposedFacet f : met(slope(WEST, top), slope(EAST, top))) {
      assertThat(f.region().maxV()).isCloseTo(0, within(1e-6));
      assertThat(f.region().area()).isCloseTo(50, within(1e-5));
    }
  }

  @Test
  void edgesFartherThanTheSlabsCutStay() {
    for (ExposedFacet f : met(slope(WEST, -0.26), slope(EAST, -0.26))) {
      assertThat(f.region().maxV()).isCloseTo(-0.26, within(1e-9));
    }
  }

  @Test
  void oneThatIsOnTheLineIsLeftToTheBit() {
    ExposedFacet on = slope(WEST, 0);
    List<ExposedFacet> met = met(on, slope(EAST, -0.2));
    assertThat(met.get(0)).isSameAs(on);
    assertThat(met.get(1).region().area()).isCloseTo(50, within(1e-5));
  }

  @Test
  void planesThatTurnTooLittleHaveNoLine() {
    Plane nearly = Plane.through(Vec3.ZERO, new Vec3(-Math.tan(Math.toRadians(46)), 0, 1));
    assertThat(Math.abs(nearly.slopeDegrees() - WEST.slopeDegrees())).isLessThan(LIMITS.folds().leastDegrees());
    ExposedFacet a = slope(WEST, -0.01);
    ExposedFacet b = slope(nearly, -0.01);
    assertThat(met(a, b)).containsExactly(a, b);
  }

  @Test
  void oneFacetMeetsNothing() {
    ExposedFacet alone = slope(WEST, -0.1);
    assertThat(met(alone)).containsExactly(alone);
    assertThat(met()).isEmpty();
  }

  /** The east slope runs along the first 4 m of the ridge only: so much of the west edge moves, and 0.2 × 6 m² stay open. */
  @Test
  void onlyTheStretchBesideTheNeighbourMoves() {
    double at = EAST.u(new Vec3(0, 4, 0));
    ExposedFacet east = Steps.facet(EAST, Region.rectangle(Math.min(0, at), -5, Math.max(0, at), -0.2), THICK);
    List<ExposedFacet> met = met(slope(WEST, -0.2), east);
    assertThat(met.get(1).region().area()).isCloseTo(4 * 5, within(1e-5));
    assertThat(met.get(0).region().area()).isCloseTo(10 * 4.8 + 4 * 0.2, within(0.2 * 0.5));
    assertThat(met.get(0).region().maxV()).isCloseTo(0, within(1e-6));
  }

  @Test
  void foldLineIsWhereThePlanesMeet() {
    FoldLine line = FoldLine.of(WEST, EAST, 0.1);
    assertThat(line.distance(new org.seamledger.geometry.Vec2(3, 0))).isCloseTo(0, within(1e-12));
    assertThat(Math.abs(line.distance(new org.seamledger.geometry.Vec2(3, -2)))).isCloseTo(2, within(1e-12));
  }
}
