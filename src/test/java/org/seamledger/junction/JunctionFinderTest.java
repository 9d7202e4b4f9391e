package org.seamledger.junction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Progress;
import org.seamledger.roof.Roof;

/** Closed forms: every expected length follows from the coordinates by Pythagoras. */
class JunctionFinderTest {

  private static final Vec3 PLUMB = new Vec3(0, 0, -0.2);

  private static void check(Scene scene, Map<String, Double> expected) {
    Roof roof = scene.build();
    List<Junction> junctions = JunctionFinder.find(roof, Progress.NONE);
    Map<String, Double> got = Scene.lengths(junctions);
    assertThat(got.keySet()).as(got.toString()).containsExactlyInAnyOrderElementsOf(expected.keySet());
    expected.forEach((k, v) -> assertThat(got.get(k)).as(k + " of " + got).isCloseTo(v, within(0.001 * v)));
    assertThat(PerimeterLaw.findings(roof, junctions)).isEmpty();
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
    // Front at x = 7: roof z = 3.5, wall top 3.9 and roof above. Cheeks run from x = 7 to where the dormer's roof meets the main one, x =
    // 6.
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

  @Test
  void hipRoofOfSquareCutSlabs() {
    // 12 × 8 m at 45°; every slab 0.2 m thick at right angles, cut square along ridge and hips: its top ends short of them.
    // Fold of the ridge 90°, of the hips 60°: 0.2·tan 45° and 0.2·tan 30° short, measured in the slope.
    double q = 0.2 / Math.sqrt(2);
    Scene scene = new Scene();
    Vec3[][] tops = {
        squareCut(new Vec3(0, -1, 1), new double[] {0, 0, 3, 12, 0, 3, 8, 4, 7, 4, 4, 7}, new int[] {1, 2, 3}),
        squareCut(new Vec3(0, 1, 1), new double[] {12, 8, 3, 0, 8, 3, 4, 4, 7, 8, 4, 7}, new int[] {1, 2, 3}),
        squareCut(new Vec3(-1, 0, 1), new double[] {0, 8, 3, 0, 0, 3, 4, 4, 7}, new int[] {1, 2}),
        squareCut(new Vec3(1, 0, 1), new double[] {12, 0, 3, 12, 8, 3, 8, 4, 7}, new int[] {1, 2})};
    Vec3[] downs = {new Vec3(0, q, -q), new Vec3(0, -q, -q), new Vec3(q, 0, -q), new Vec3(-q, 0, -q)};
    for (int i = 0; i < 4; i++) {
      scene.roof("slab" + i, List.of((Solid) Scene.prism(List.of(tops[i]), downs[i])));
    }
    check(scene, Map.of("ridge", 4.0, "hip", 16 * Math.sqrt(3), "nothing low", 40.0));
  }

  /** Moves the given sides of an outline inwards by 0.2·tan(φ / 2): side 2 of a four-sided face is the ridge, the others are hips. */
  private static Vec3[] squareCut(Vec3 normal, double[] xyz, int[] sides) {
    List<Vec3> p = Scene.points(xyz);
    int n = p.size();
    Vec3[] point = new Vec3[n];
    Vec3[] direction = new Vec3[n];
    for (int i = 0; i < n; i++) {
      direction[i] = p.get((i + 1) % n).minus(p.get(i)).unit();
      double by = java.util.stream.IntStream.of(sides).anyMatch(List.of(i)::contains)
          ? 0.2 * Math.tan(Math.toRadians(n == 4 && i == 2 ? 45 : 30)) : 0;
      point[i] = p.get(i).plus(normal.unit().cross(direction[i]).times(by));
    }
    Vec3[] corners = new Vec3[n];
    for (int i = 0; i < n; i++) {
      int h = (i + n - 1) % n;
      Vec3 across = direction[i].cross(normal.unit());
      double t = point[i].minus(point[h]).dot(across) / direction[h].dot(across);
      corners[i] = point[h].plus(direction[h].times(t));
    }
    return corners;
  }

  @Test
  void butterflyDrainsIntoALevelValley() {
    Scene scene = new Scene()
        .slab("w", PLUMB, 0, 0, 5, 0, 10, 5, 4, 10, 3, 4, 0, 3).slab("e", PLUMB, 4, 0, 3, 4, 10, 3, 8, 10, 5, 8, 0, 5);
    check(scene, Map.of("level-valley", 10.0, "nothing high", 20.0, "nothing along", 4 * RAKE));
  }

  @Test
  void butterflyOfSquareCutSlabsThatOverlap() {
    double k = 0.2 / Math.hypot(1, 0.5);
    Scene scene = new Scene()
        .slab("w", new Vec3(-0.5 * k, 0, -k), 0, 0, 5, 0, 10, 5, 4.2, 10, 2.9, 4.2, 0, 2.9)
        .slab("e", new Vec3(0.5 * k, 0, -k), 3.8, 0, 2.9, 3.8, 10, 2.9, 8, 10, 5, 8, 0, 5);
    check(scene, Map.of("level-valley", 10.0, "nothing high", 20.0, "nothing along", 4 * RAKE));
  }

  @Test
  void gambrelHasConvexBreaksAndBellCastConcaveOnes() {
    Scene scene = new Scene()
        .slab("low", PLUMB, 0, 0, 3, 6, 0, 3, 6, 1, 5, 0, 1, 5).slab("high", PLUMB, 0, 1, 5, 6, 1, 5, 6, 3, 6, 0, 3, 6);
    check(scene, Map.of("knee", 6.0, "nothing low", 6.0, "nothing high", 6.0, "nothing along", 2 * Math.sqrt(5) + 2 * Math.sqrt(5)));
    Scene cast = new Scene()
        .slab("low", PLUMB, 0, 0, 3, 6, 0, 3, 6, 2, 4, 0, 2, 4).slab("high", PLUMB, 0, 2, 4, 6, 2, 4, 6, 3, 6, 0, 3, 6);
    check(cast, Map.of("break", 6.0, "nothing low", 6.0, "nothing high", 6.0, "nothing along", 2 * Math.sqrt(5) + 2 * Math.sqrt(5)));
  }

  @Test
  void layersOnTopOfEachOtherAreOneFace() {
    Scene scene = new Scene()
        .slab("covering", new Vec3(0, 0, -0.05), 0, 0, 3, 6, 0, 3, 6, 4, 4, 0, 4, 4)
        .slab("sheathing", new Vec3(0, 0, -0.03), 0, 0, 2.95, 6, 0, 2.95, 6, 4, 3.95, 0, 4, 3.95)
        .slab("rafters", new Vec3(0, 0, -0.2), 0, -0.3, 2.725, 6, -0.3, 2.725, 6, 4, 3.8, 0, 4, 3.8);
    check(scene, Map.of("nothing high", 6.0, "nothing low", 6.0, "nothing along", 2 * Math.hypot(4, 1)));
  }

  @Test
  void piecesOfOnePlaneAreOneFace() {
    Scene scene = new Scene()
        .slab("a", PLUMB, 0, 0, 3, 3, 0, 3, 3, 4, 4, 0, 4, 4).slab("b", PLUMB, 3.02, 0, 3, 6, 0, 3, 6, 4, 4, 3.02, 4, 4);
    check(scene, Map.of("nothing high", 6.0, "nothing low", 6.0, "nothing along", 2 * Math.hypot(4, 1)));
  }

  @Test
  void dormerOnARoofThatWasCutForIt() {
    // The main roof's hole: front corners (7, 4), (7, 6), along the cheeks to (6, 4), (6, 6), along the valleys to (5, 5).
    Solid hole = Scene.prism(Scene.points(7, 4, 6, 7, 6, 6, 6, 6, 6, 5, 5, 6, 6, 4, 6), new Vec3(0, 0, -4));
    Scene main = new Scene()
        .slab("west", PLUMB, 0, 0, 3, 0, 10, 3, 4, 10, 5, 4, 0, 5)
        .roof("east", List.of((Solid) new Solid.Difference(
            Scene.prism(Scene.points(4, 0, 5, 4, 10, 5, 8, 10, 3, 8, 0, 3), PLUMB), hole)));
    check(dormer(main), Map.of("ridge", 10.0 + 2.0, "valley", 2 * 1.5, "wall high", 2.0,
        "wall along", 2 * Math.hypot(1, 0.5), "nothing low", 20.0 + 2 * 1.0, "nothing along", 4 * RAKE + 2 * Math.hypot(1, 0.5)));
  }

  @Test
  void barrelIsOneCurvedFace() {
    // Half a turn less the steepest parts: 30 facets of 4° on a radius of 3 m, axis along y, 8 m long.
    java.util.List<Vec3> arc = new java.util.ArrayList<>();
    for (int i = 0; i <= 30; i++) {
      double a = Math.toRadians(150 - 4 * i);
      arc.add(new Vec3(3 * Math.cos(a), 0, 3 * Math.sin(a)));
    }
    double chord = 30 * 2 * 3 * Math.sin(Math.toRadians(2));
    java.util.List<Vec3> section = new java.util.ArrayList<>(arc);
    for (int i = 30; i >= 0; i--) {
      section.add(arc.get(i).times(2.8 / 3));
    }
    Scene scene = new Scene().roof("barrel", List.of((Solid) Scene.prism(section, new Vec3(0, 8, 0))));
    Roof roof = scene.build();
    assertThat(roof.faces()).hasSize(1);
    assertThat(roof.faces().get(0).isCurved()).isTrue();
    assertThat(roof.faces().get(0).areaM2()).isCloseTo(8 * chord, within(1e-4 * 8 * chord));
    Map<String, Double> got = Scene.lengths(JunctionFinder.find(roof, Progress.NONE));
    assertThat(got.get("nothing low")).isCloseTo(16, within(1e-3));
    assertThat(got.values().stream().mapToDouble(d -> d).sum()).isCloseTo(16 + 2 * chord, within(1e-3));
    assertThat(JunctionFinder.find(roof, Progress.NONE)).hasSize(4);
    assertThat(PerimeterLaw.findings(roof, JunctionFinder.find(roof, Progress.NONE))).isEmpty();
  }

  @Test
  void sheetWithoutThickness() {
    org.seamledger.geometry.Mesh sheet = new org.seamledger.geometry.MeshBuilder()
        .face(Scene.points(0, 0, 3, 4, 0, 5, 4, 10, 5, 0, 10, 3), List.of())
        .face(Scene.points(4, 0, 5, 8, 0, 3, 8, 10, 3, 4, 10, 5), List.of()).build();
    check(new Scene().roof("sheet", List.of((Solid) sheet)), Map.of("ridge", 10.0, "nothing low", 20.0, "nothing along", 4 * RAKE));
  }

  @Test
  void stepFromAnUpperRoofToALowerOne() {
    // Same slope, the upper roof 0.8 m higher, its gable wall between; the upper roof overhangs the wall by 0.3 m.
    Scene scene = new Scene()
        .slab("low", PLUMB, 0, 0, 3, 6, 0, 3, 6, 4, 5, 0, 4, 5).slab("high", PLUMB, 5.7, 0, 3.8, 12, 0, 3.8, 12, 4, 5.8, 5.7, 4, 5.8)
        .wall("gable", Scene.prism(Scene.points(6, 0, 3.6, 6.3, 0, 3.6, 6.3, 4, 5.6, 6, 4, 5.6), new Vec3(0, 0, -4)));
    double along = Math.hypot(4, 2);
    check(scene, Map.of("wall along", along, "nothing along", 3 * along, "nothing low", 12.3, "nothing high", 12.3));
  }

  @Test
  void profiledSheetGivesItsMainPlane() {
    // Trapezoidal ribs 0.03 m high every 0.25 m, drawn along the slope: z = 3 + y / 4 at the crests. 24 ribs, 6 m.
    java.util.List<Vec3> section = new java.util.ArrayList<>();
    for (int i = 0; i < 24; i++) {
      double x = i * 0.25;
      section.addAll(Scene.points(x, 0, 3, x + 0.06, 0, 3, x + 0.08, 0, 2.97, x + 0.23, 0, 2.97));
    }
    section.add(new Vec3(6, 0, 3));
    section.addAll(Scene.points(6, 0, 2.96, 0, 0, 2.96));
    java.util.Collections.reverse(section);
    Scene scene = new Scene().roof("sheet", List.of((Solid) Scene.prism(section, new Vec3(0, 4, 1))));
    check(scene, Map.of("nothing high", 6.0, "nothing low", 6.0, "nothing along", 2 * Math.hypot(4, 1)));
  }

  @Test
  void coursesOfTilesGiveTheirMainPlane() {
    // 12 courses, each 0.35 m of run and 0.0875 m of rise, its own slope flatter so that its foot stands 0.02 m proud.
    java.util.List<Solid> courses = new java.util.ArrayList<>();
    for (int i = 0; i < 12; i++) {
      double y = i * 0.35;
      double z = 3 + i * 0.0875;
      courses.add(Scene.prism(Scene.points(0, y, z + 0.02, 6, y, z + 0.02, 6, y + 0.35, z + 0.0875, 0, y + 0.35, z + 0.0875),
          new Vec3(0, 0, -0.05)));
    }
    check(new Scene().roof("tiles", courses), Map.of("nothing high", 6.0, "nothing low", 6.0, "nothing along", 2 * Math.hypot(4.2, 1.05)));
  }

  @Test
  void narrowStripsThatMeetAcrossTheirEndsStayTwoFaces() {
    // Two mitred strips 0.3 m wide at 8°: the fold of their hip, acos(cos² 8°) = 11.3°, is less than that of facets of a curve.
    double h = 0.3 * Math.tan(Math.toRadians(8));
    double hip = Math.sqrt(2 * 0.09 + h * h);
    Scene scene = new Scene()
        .slab("s", PLUMB, 0, 0, 3, 6, 0, 3, 5.7, 0.3, 3 + h, 0.3, 0.3, 3 + h)
        .slab("w", PLUMB, 0, 0, 3, 0.3, 0.3, 3 + h, 0.3, 5.7, 3 + h, 0, 6, 3);
    check(scene, Map.of("hip", hip, "nothing low", 12.0, "nothing high", 10.8, "nothing oblique", 2 * hip));
  }
}
