package org.seamledger.junction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.Roof;

/** Closed forms: every expected length follows from the coordinates by Pythagoras. */
class JunctionFinderTest {

  private static final Vec3 PLUMB = new Vec3(0, 0, -0.2);

  private static void check(Scene scene, Map<String, Double> expected) {
    Roof roof = scene.build();
    List<Junction> junctions = JunctionFinder.find(roof);
    Map<String, Double> got = Scene.lengths(junctions);
    assertThat(got.keySet()).as(got.toString()).containsExactlyInAnyOrderElementsOf(expected.keySet());
    expected.forEach((k, v) -> assertThat(got.get(k)).as(k + " of " + got).isCloseTo(v, within(0.001 * v)));
    assertThat(JunctionFinder.perimeterFindings(roof, junctions)).isEmpty();
  }

  /** 10 m long, 8 m wide, 6/12: ridge 2 m above the eaves. */
  private static Scene gable(Vec3 downWest, Vec3 downEast) {
    return new Scene()
        .slab("west", downWest, 0, 0, 3, 0, 10, 3, 4, 10, 5, 4, 0, 5)
        .slab("east", downEast, 4, 0, 5, 4, 10, 5, 8, 10, 3, 8, 0, 3);
  }

  private static final double RAKE = Math.hypot(4, 2);

  @Test
  void gableOfPlumbCutSlabs() {
    check(gable(PLUMB, PLUMB), Map.of("ridge", 10.0, "nothing low", 20.0, "nothing along", 4 * RAKE));
  }

  @Test
  void gableOfSquareCutSlabsMeetsAtTheSameRidge() {
    double k = 0.2 / Math.hypot(1, 0.5);
    // Cut square, each slab's top ends 0.2·tan(fold / 2) = 0.1 m short of the ridge along the slope.
    double s = 0.1 / Math.hypot(1, 0.5);
    Scene scene = new Scene()
        .slab("west", new Vec3(0.5 * k, 0, -k), 0, 0, 3, 0, 10, 3, 4 - s, 10, 5 - s / 2, 4 - s, 0, 5 - s / 2)
        .slab("east", new Vec3(-0.5 * k, 0, -k), 4 + s, 0, 5 - s / 2, 4 + s, 10, 5 - s / 2, 8, 10, 3, 8, 0, 3);
    check(scene, Map.of("ridge", 10.0, "nothing low", 20.0, "nothing along", 4 * RAKE));
  }

  @Test
  void hipRoof() {
    // 12 × 8 m at 45°: ridge 4 m, hips 4·√3.
    Scene scene = new Scene()
        .slab("s", PLUMB, 0, 0, 3, 12, 0, 3, 8, 4, 7, 4, 4, 7)
        .slab("n", PLUMB, 12, 8, 3, 0, 8, 3, 4, 4, 7, 8, 4, 7)
        .slab("w", PLUMB, 0, 8, 3, 0, 0, 3, 4, 4, 7)
        .slab("e", PLUMB, 12, 0, 3, 12, 8, 3, 8, 4, 7);
    check(scene, Map.of("ridge", 4.0, "hip", 16 * Math.sqrt(3), "nothing low", 40.0));
  }

  @Test
  void wallAtTheHeadOfALeanTo() {
    Scene scene = new Scene().slab("roof", PLUMB, 0, 0, 3, 6, 0, 3, 6, 4, 4, 0, 4, 4).wall("wall", -1, 4, 0, 7, 4.3, 6);
    check(scene, Map.of("wall high", 6.0, "nothing low", 6.0, "nothing along", 2 * Math.hypot(4, 1)));
  }

  @Test
  void roofThatRunsIntoAWall() {
    Scene scene = new Scene().slab("roof", PLUMB, 0, 0, 3, 6, 0, 3, 6, 4.2, 4.05, 0, 4.2, 4.05).wall("wall", -1, 4, 0, 7, 4.3, 6);
    check(scene, Map.of("wall high", 6.0, "nothing low", 6.0, "nothing along", 2 * Math.hypot(4, 1)));
  }

  @Test
  void wallBelowTheRoofMakesNoLine() {
    Scene scene = new Scene().slab("roof", PLUMB, 0, 0, 3, 6, 0, 3, 6, 4, 4, 0, 4, 4).wall("wall", 0, 3, 0, 6, 3.3, 3.65);
    check(scene, Map.of("nothing high", 6.0, "nothing low", 6.0, "nothing along", 2 * Math.hypot(4, 1)));
  }

  @Test
  void wallThatRunsOutAtTheSurface() {
    // A level wall top at 3.5 meets the roof (z = 3 + y / 4) at y = 2.
    Scene scene = new Scene().slab("roof", PLUMB, 0, 0, 3, 6, 0, 3, 6, 4, 4, 0, 4, 4).wall("wall", 5.8, 0, 0, 6, 4, 3.5);
    check(scene, Map.of("wall along", Math.hypot(2, 0.5), "wall low", 0.2, "nothing high", 6.0, "nothing low", 5.8, "nothing along",
        Math.hypot(4, 1) + Math.hypot(2, 0.5)));
  }

  @Test
  void chimneyOnASlopeAndAcrossARidge() {
    double slope = Math.hypot(1, 0.5);
    check(gable(PLUMB, PLUMB).thing("chimney", "IfcChimney", Scene.box(1, 3, 0, 1.6, 4, 7)),
        Map.of("ridge", 10.0, "nothing low", 20.0, "nothing along", 4 * RAKE, "penetration along", 2 * 0.6 * slope,
            "penetration high", 1.0, "penetration low", 1.0));
    check(gable(PLUMB, PLUMB).thing("chimney", "IfcChimney", Scene.box(3.5, 3, 0, 4.5, 4, 7)),
        Map.of("ridge", 9.0, "nothing low", 20.0, "nothing along", 4 * RAKE, "penetration along", 2 * slope, "penetration high", 2.0));
  }

  @Test
  void pipeIsOneClosedLine() {
    Scene scene = gable(PLUMB, PLUMB).thing("pipe", "IfcPipeSegment", Scene.cylinder(2, 5, 0, 6, 0.1, 96));
    // Ellipse with half axes 0.1 and 0.1·√1.25, perimeter by Ramanujan's second formula (exact to 1e-9 here).
    double a = 0.1 * Math.sqrt(1.25);
    double h = Math.pow((a - 0.1) / (a + 0.1), 2);
    double ellipse = Math.PI * (a + 0.1) * (1 + 3 * h / (10 + Math.sqrt(4 - 3 * h)));
    check(scene, Map.of("ridge", 10.0, "nothing low", 20.0, "nothing along", 4 * RAKE, "round ", ellipse));
    Junction pipe = scene.junctions().stream().filter(j -> j.facts().word("against").equals("round")).findFirst().orElseThrow();
    assertThat(pipe.facts().number("diameterM")).isCloseTo(0.2, within(1e-3));
  }

  @Test
  void unfilledOpening() {
    Scene scene = new Scene().roof("roof", List.of((Solid) Scene.prism(Scene.points(0, 0, 3, 6, 0, 3, 6, 4, 4, 0, 4, 4), PLUMB)),
        Scene.box(2, 1, 2, 3, 2, 5));
    check(scene, Map.of("nothing high", 6.0, "nothing low", 6.0, "nothing along", 2 * Math.hypot(4, 1), "opening high", 1.0,
        "opening low", 1.0, "opening along", 2 * Math.hypot(1, 0.25)));
  }

  /** A gable dormer on the east side of the gable, its ridge level at 4.4 above x = 5.2, eaves at 4, front wall at x = 7. */
  private static Scene dormer(Scene main) {
    // The dormer's roof: ridge along x at y = 5 from x = 4.5 (inside the attic) to x = 7, half width 1, slope 0.5.
    return main
        .slab("dormer-s", PLUMB, 4.6, 4, 4, 7, 4, 4, 7, 5, 4.5, 4.6, 5, 4.5)
        .slab("dormer-n", PLUMB, 4.6, 5, 4.5, 7, 5, 4.5, 7, 6, 4, 4.6, 6, 4)
        .wall("front", 6.8, 4, 3, 7, 6, 3.9)
        .wall("cheek-s", 5, 4, 3, 6.8, 4.2, 3.9)
        .wall("cheek-n", 5, 5.8, 3, 6.8, 6, 3.9);
  }

  @Test
  void dormerOnAnUncutRoof() {
    // Main roof east of the ridge: z = 5 - (x - 4) / 2. Dormer eave z = 4 meets it at x = 6, dormer ridge z = 4.5 at x = 5.
    double valley = Math.sqrt(1 + 1 + 0.25);
    // Front at x = 7: roof z = 3.5, wall top 3.9 and roof above. Cheeks run from x = 7 to where the dormer's roof meets the main one, x = 6.
    check(dormer(gable(PLUMB, PLUMB)), Map.of("ridge", 10.0 + 2.0, "valley", 2 * valley, "wall high", 2.0,
        "wall along", 2 * Math.hypot(1, 0.5), "nothing low", 20.0 + 2 * 1.0, "nothing along", 4 * RAKE + 2 * Math.hypot(1, 0.5)));
  }

  @Test
  void lowerRoofUnderAnOverhangStaysWholeDownToTheWall() {
    Scene scene = new Scene().slab("low", PLUMB, 0, 0, 3, 6, 0, 3, 6, 4, 4, 0, 4, 4)
        .slab("high", PLUMB, -1, 3.2, 5, 7, 3.2, 5, 7, 9, 7, -1, 9, 7).wall("wall", -0.5, 4, 0, 6.5, 4.3, 5);
    double high = Math.hypot(5.8, 2);
    check(scene, Map.of("wall high", 6.0, "nothing low", 14.0, "nothing high", 8.0, "nothing along", 2 * Math.hypot(4, 1) + 2 * high));
  }

  @Test
  void parapetsAroundALowSlope() {
    Scene scene = new Scene().slab("roof", PLUMB, 0, 0, 3, 10, 0, 3, 10, 8, 3.4, 0, 8, 3.4)
        .wall("s", 0, 0, 0, 10, 0.3, 4).wall("n", 0, 7.7, 0, 10, 8, 4).wall("w", 0, 0.3, 0, 0.3, 7.7, 4).wall("e", 9.7, 0.3, 0, 10, 7.7, 4);
    check(scene, Map.of("wall low", 9.4, "wall high", 9.4, "wall along", 2 * Math.hypot(7.4, 0.37)));
  }

  @Test
  void wingWhoseRoofRunsUnderTheMainRoof() {
    // Main gable 45° along x, ridge at y = 0, z = 10, eaves at y = ±5, z = 5; wing gable 45° along y, ridge x = 0, z = 8, to y = -9.
    Scene scene = new Scene()
        .slab("main-s", PLUMB, -10, -5, 5, 10, -5, 5, 10, 0, 10, -10, 0, 10)
        .slab("main-n", PLUMB, 10, 5, 5, -10, 5, 5, -10, 0, 10, 10, 0, 10)
        .slab("wing-w", PLUMB, -3, 0, 5, -3, -9, 5, 0, -9, 8, 0, 0, 8)
        .slab("wing-e", PLUMB, 3, -9, 5, 3, 0, 5, 0, 0, 8, 0, -9, 8);
    // Valleys from (±3, -5, 5) to (0, -2, 8); the wing's ridge from y = -9 to -2; its eaves from y = -9 to -5.
    check(scene, Map.of("ridge", 20.0 + 7.0, "valley", 2 * Math.sqrt(27), "nothing low", 20.0 + 14.0 + 8.0,
        "nothing along", 4 * Math.sqrt(50) + 2 * Math.sqrt(18)));
  }
}
