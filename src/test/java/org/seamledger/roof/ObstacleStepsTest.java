package org.seamledger.roof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamledger.roof.Steps.LIMITS;
import static org.seamledger.roof.Steps.TOLERANCE;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Scene;
import org.seamledger.roof.Obstacle.OpenHole;
import org.seamledger.roof.Obstacle.Penetration;
import org.seamledger.roof.Obstacle.Wall;

/** What stands in a level roof 10 m by 10 m with its top at z = 0, and what of it is outside. */
class ObstacleStepsTest {

  private static Scene roof() {
    return new Scene().slab("roof", new Vec3(0, 0, -0.2), 0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 10, 0);
  }

  private static List<Obstacle> obstacles(Scene scene) {
    return Steps.obstacles(scene, Steps.tops(scene).get(0));
  }

  // ---- obstacles and heights

  @ParameterizedTest
  @CsvSource({"0.09, 0", "0.1, 1", "1, 1"})
  void aWallCountsFromTheUpstandOn(double height, int expected) {
    assertThat(obstacles(roof().wall("wall", 2, 2, -1, 5, 2.3, height))).hasSize(expected);
  }

  @ParameterizedTest
  @CsvSource({"0.01, 0", "0.03, 1"})
  void aPenetrationCountsFromALowerHeightOn(double height, int expected) {
    assertThat(obstacles(roof().thing("stack", "IfcChimney", Scene.box(4, 4, -1, 5, 5, height)))).hasSize(expected);
  }

  /** To the centimetre, and no farther than 3 m. */
  @ParameterizedTest
  @CsvSource({"1.23, 1.23", "2.5, 2.5", "8, 3"})
  void heightIsThatAboveTheFace(double height, double expected) {
    assertThat(obstacles(roof().wall("wall", 2, 2, -1, 5, 2.3, height))).singleElement().isInstanceOfSatisfying(Wall.class, w -> {
      assertThat(w.heightM()).isCloseTo(expected, within(0.0101));
      assertThat(w.footprint().area()).isCloseTo(0.9, within(1e-6));
    });
  }

  @Test
  void whatEndsBelowOrStandsElsewhereIsNone() {
    assertThat(obstacles(roof().wall("under", 2, 2, -3, 5, 2.3, -0.1)
        .thing("beside", "IfcChimney", Scene.box(12, 4, -1, 13, 5, 3)))).isEmpty();
  }

  /** A wall 50 mm high under another that sits on it. */
  @Test
  void aLowWallIsAsHighAsWhatSitsOnIt() {
    assertThat(obstacles(roof().wall("low", 2, 2, -1, 5, 2.3, 0.05).wall("on it", 2, 2, 0.05, 5, 2.3, 1)))
        .filteredOn(o -> o.globalId().equals("low")).singleElement().satisfies(o -> assertThat(o.heightM()).isCloseTo(1, within(0.011)));
  }

  @Test
  void anEmptyOpeningIsAHole() {
    Scene scene = new Scene().roof("roof", List.of(Scene.box(0, 0, -0.2, 10, 10, 0)), Scene.box(3, 3, -1, 4, 5, 1));
    assertThat(obstacles(scene)).singleElement().isInstanceOfSatisfying(OpenHole.class, h -> {
      assertThat(h.footprint().area()).isCloseTo(2, within(1e-6));
      assertThat(h.round()).isFalse();
      assertThat(h.heightM()).isZero();
    });
  }

  @Test
  void aHoleThatSomethingStandsInIsThatThings() {
    Scene scene = new Scene().roof("roof", List.of(Scene.box(0, 0, -0.2, 10, 10, 0)), Scene.box(3, 3, -1, 4, 5, 1))
        .thing("stack", "IfcChimney", Scene.box(3.1, 3.1, -1, 3.9, 4.9, 2));
    assertThat(obstacles(scene)).hasSize(2).allSatisfy(o -> assertThat(o).isInstanceOfSatisfying(Penetration.class, p -> {
      assertThat(p.globalId()).isEqualTo("stack");
      assertThat(p.passage().hole()).isEqualTo(Passage.Hole.WHOLE);
    }));
  }

  // ---- passage

  @ParameterizedTest
  @CsvSource({"0, 0, NONE", "0, 0.5, PARTLY", "-0.1, 1.1, WHOLE"})
  void passageFollowsFromTheHole(double from, double to, Passage.Hole expected) {
    Region hole = Region.rectangle(from, -1, to, 2);
    Region thing = Region.rectangle(0, 0, 1, 1);
    assertThat(Passage.of(true, thing, Region.rectangle(-9, -9, 9, 9).minus(hole), hole, LIMITS.penetrations()))
        .isEqualTo(new Passage(true, expected));
  }

  // ---- bundles

  private static Penetration pipe(String id, boolean service, String ifcClass, double from, double to) {
    return new Penetration(id, ifcClass, Region.rectangle(from, 0, to, 1), 1, false, new Passage(service, Passage.Hole.UNKNOWN));
  }

  @Test
  void insulationJoinsItsPipeAndNothingElseDoes() {
    Penetration pipe = pipe("pipe", true, "IfcPipeSegment", 0.2, 0.8);
    Penetration jacket = pipe("jacket", false, "IfcCovering", 0, 1);
    Penetration other = pipe("other", true, "IfcPipeSegment", 2, 3);
    Penetration stack = pipe("stack", false, "IfcChimney", 0, 1);
    Wall wall = new Wall("wall", "IfcWall", Region.rectangle(0, 0, 1, 1), 1);
    List<Obstacle> joined = Bundles.joined(List.of(wall, jacket, stack, pipe, other), LIMITS.penetrations());
    assertThat(joined).extracting(Obstacle::globalId).containsExactly("wall", "pipe", "stack", "other");
    assertThat(joined.get(1).footprint().area()).as("the outer line counts").isCloseTo(1, within(1e-9));
    assertThat(Bundles.joined(List.of(), LIMITS.penetrations())).isEmpty();
  }

  // ---- round outlines

  private static Region ellipse(int corners, double a, double b) {
    List<Vec2> ring = new ArrayList<>();
    for (int i = 0; i < corners; i++) {
      ring.add(new Vec2(5 + a * Math.cos(2 * Math.PI * i / corners), b * Math.sin(2 * Math.PI * i / corners)));
    }
    return Region.polygon(ring);
  }

  /** Corners of a regular n-gon lie at √(3 / (2 + cos(2π/n))) of the circle of equal second moments: 11 are off by 2.8 %, 10 by 3.3 %. */
  @ParameterizedTest
  @CsvSource({"11, 1, 1, true", "10, 1, 1, true", "9, 1, 1, false", "4, 1, 1, false", "48, 2, 1, true", "48, 0.05, 0.07, true"})
  void circlesAndEllipsesAreRound(int corners, double a, double b, boolean expected) {
    assertThat(RoundOutline.isRound(ellipse(corners, a, b), LIMITS.penetrations())).isEqualTo(expected);
  }

  @Test
  void aRectangleOfManyCornersIsNotRound() {
    List<Vec2> ring = new ArrayList<>();
    for (int side = 0; side < 4; side++) {
      Vec2[] c = {new Vec2(0, 0), new Vec2(1, 0), new Vec2(1, 1), new Vec2(0, 1)};
      for (int i = 0; i < 5; i++) {
        ring.add(c[side].towards(c[(side + 1) % 4], i / 5.0));
      }
    }
    assertThat(RoundOutline.isRound(Region.polygon(ring), LIMITS.penetrations())).isFalse();
  }

  // ---- exposure

  private static Region exposed(TopSurface top, List<TopSurface> covers, Obstacle... obstacles) {
    return new Exposure(covers, Steps.NO_CURVES, TOLERANCE, LIMITS).of(top, List.of(obstacles));
  }

  private static final TopSurface TEN = Steps.surface(Steps.LEVEL, Region.rectangle(0, 0, 10, 10));

  private static Wall ring(double from, double to) {
    Region inside = Region.rectangle(from + 0.3, from + 0.3, to - 0.3, to - 0.3);
    return new Wall("ring", "IfcWall", Region.rectangle(from, from, to, to).minus(inside), 2);
  }

  @Test
  void whatStandsInAFaceIsTakenAway() {
    assertThat(exposed(TEN, List.of(TEN)).area()).isCloseTo(100, within(1e-6));
    Wall wall = new Wall("wall", "IfcWall", Region.rectangle(2, 2, 5, 2.3), 2);
    assertThat(exposed(TEN, List.of(TEN), wall).area()).isCloseTo(99.1, within(1e-3));
  }

  /** Inside walls all round, and under another roof: that of a dormer or a tower. Without the roof it is a court. */
  @Test
  void whatIsEnclosedAndCoveredIsHidden() {
    TopSurface cover = Steps.surface(Steps.LEVEL.moved(2), Region.rectangle(2, 2, 6, 6));
    double frame = 16 - 3.4 * 3.4;
    assertThat(exposed(TEN, List.of(TEN, cover), ring(2, 6)).area()).isCloseTo(100 - 16, within(1e-3));
    assertThat(exposed(TEN, List.of(TEN), ring(2, 6)).area()).isCloseTo(100 - frame, within(1e-3));
  }

  @Test
  void whatRunsUnderAnOverhangStaysWhole() {
    TopSurface cover = Steps.surface(Steps.LEVEL.moved(2), Region.rectangle(-5, -5, 15, 15));
    assertThat(exposed(TEN, List.of(TEN, cover)).area()).isCloseTo(100, within(1e-6));
  }
}
