package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.seamledger.SharedModels;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/**
 * Real models against what their authoring tools wrote in them (property and quantity sets named at each check), and against lengths that
 * were taken by hand from their roofs' planes. Skipped where the models are absent.
 */
@Tag("slow")
class AuthoringToolQuantitiesTest {

  /** By hand or from a mesh: good to a centimetre or two. */
  private static final double BY_HAND = 0.02;
  private static final double SQUARE_FOOT = 0.3048 * 0.3048;

  /** Each slab's quantities GrossArea, NetArea and Perimeter; plan 13.0 by 11.0 m at 30 degrees by hand. */
  @Test
  void gableHouse() throws IOException {
    Takeoff t = takeoff("d01_");
    assertThat(t.faces()).hasSize(2).allSatisfy(f -> {
      assertThat(f.areaM2()).isCloseTo(82.5610884941, within(1e-3));
      assertThat(f.perimeterM()).isCloseTo(38.7017059222, within(1e-3));
      assertThat(f.slopeDegrees()).isCloseTo(30, within(1e-3));
    });
    assertThat(lengths(t)).containsOnlyKeys("eave", "rake", "ridge");
    near(lengths(t).get("ridge"), 13);
    near(lengths(t).get("eave"), 13, 13);
    near(lengths(t).get("rake"), 6.351, 6.351, 6.351, 6.351);
  }

  /** Pset_RoofCommon.TotalArea (net of the two skylights; their frames stand on the roof beside the holes). */
  @Test
  void flatRoofBehindParapets() throws IOException {
    Takeoff t = takeoff("d03_");
    assertThat(area(t)).isCloseTo(132.926036, within(0.005 * 132.9));
    assertThat(lengths(t)).containsOnlyKeys("flat-edge");
  }

  /** Qto_SlabBaseQuantities.NetArea; PitchAngle 45; the ridge by hand. */
  @Test
  void asymmetricGable() throws IOException {
    Takeoff t = takeoff("d04_");
    assertThat(t.faces().stream().map(RoofFace::areaM2).sorted().toList()).satisfiesExactly(
        a -> assertThat(a).isCloseTo(22.40114282797721, within(1e-3)), a -> assertThat(a).isCloseTo(31.211693321568944, within(1e-3)));
    assertThat(t.faces()).allSatisfy(f -> assertThat(f.slopeDegrees()).isCloseTo(45, within(1e-3)));
    near(lengths(t).get("ridge"), 6.6);
  }

  /**
   * A low barrel in triangles beside a level box: web-ifc's mesh, planes clustered, to two centimetres (796.32 and 181.40 m²; eaves 38.20,
   * 14.00 and 4.20; end arcs 25.45; sidewalls 8.80 against the box).
   */
  @Test
  void lowBarrelInTriangles() throws IOException {
    Takeoff t = takeoff("d15_");
    assertThat(t.faces()).hasSize(2);
    assertThat(t.faces().stream().filter(RoofFace::isCurved)).singleElement()
        .satisfies(f -> assertThat(f.areaM2()).isCloseTo(796.32, within(0.4)));
    assertThat(area(t)).isCloseTo(977.72, within(0.5));
    assertThat(lengths(t)).containsOnlyKeys("eave", "rake", "sidewall", "flat-edge");
    near(lengths(t).get("eave"), 4.2, 14, 38.2);
    near(lengths(t).get("rake"), 25.45, 25.45);
    near(lengths(t).get("sidewall"), 8.8, 8.8);
  }

  /** The same of a barrel of 81 facets and more: 116.923 m², eaves 14.840, end arcs 7.880, nothing else. */
  @Test
  void barrelInTriangles() throws IOException {
    Takeoff t = takeoff("d16_");
    assertThat(t.faces()).singleElement().satisfies(f -> assertThat(f.areaM2()).isCloseTo(116.923, within(0.02)));
    assertThat(lengths(t)).containsOnlyKeys("eave", "rake");
    near(lengths(t).get("eave"), 14.84, 14.84);
    near(lengths(t).get("rake"), 7.88, 7.88);
  }

  /** The hole that a chimney of 0.70 by 0.70 m, known from the companion structural model, leaves in a slab at 45 degrees. */
  @Test
  void chimneyHoleInASlab() throws IOException {
    Map<String, List<Double>> lengths = lengths(takeoff("d04_"));
    near(lengths.get("curb-upslope"), 0.7);
    near(lengths.get("curb-downslope"), 0.7);
    near(lengths.get("curb-side"), 0.99, 0.99);
  }

  /** TotalSurfaceArea of the two small roofs that nothing cuts; ridges, hips and valleys by hand from the planes. */
  @Test
  void halfHipsAndDormers() throws IOException {
    Takeoff t = takeoff("d05_");
    List<Double> areas = t.faces().stream().map(RoofFace::areaM2).toList();
    assertThat(areas).anySatisfy(a -> assertThat(2 * a).isCloseTo(23.49733121, within(1e-3)))
        .anySatisfy(a -> assertThat(2 * a).isCloseTo(11.53975021, within(1e-3)));
    assertThat(t.faces()).hasSize(10).allSatisfy(f -> assertThat(f.slopeDegrees()).isCloseTo(40, within(0.01)));
    near(lengths(t).get("ridge"), 2.97, 4.5, 4.53, 10.03);
    near(lengths(t).get("hip"), 2.26, 2.26, 3.41, 3.41);
    near(lengths(t).get("valley"), 4.87, 4.87, 4.93, 4.93);
  }

  /** No quantities in the file: areas by an independent mesher, ridges and valleys by hand. */
  @Test
  void crossGableByName() throws IOException {
    Takeoff t = takeoff("d07_");
    assertThat(t.faces().stream().map(RoofFace::areaM2).sorted().toList()).satisfiesExactly(
        a -> assertThat(a).isCloseTo(38.829, within(2e-3)), a -> assertThat(a).isCloseTo(39.134, within(2e-3)),
        a -> assertThat(a).isCloseTo(41.741, within(2e-3)), a -> assertThat(a).isCloseTo(41.741, within(2e-3)),
        a -> assertThat(a).isCloseTo(81.385, within(2e-3)), a -> assertThat(a).isCloseTo(97.830, within(2e-3)));
    near(lengths(t).get("ridge"), 9.21, 11.43, 17.22);
    near(lengths(t).get("valley"), 5.13, 5.76);
  }

  /** Qto_RoofBaseQuantities.GrossArea of the two slopes, the south one without its chimney of 0.30 by 0.30 m; the ridge by hand. */
  @Test
  void smallHouseWithChimney() throws IOException {
    Takeoff t = takeoff("d08_");
    List<Double> areas = t.faces().stream().map(RoofFace::areaM2).toList();
    double chimney = 0.3 * 0.3 / Math.cos(Math.toRadians(24.78));
    assertThat(areas).anySatisfy(a -> assertThat(a).isCloseTo(16.793759125845, within(1e-3)))
        .anySatisfy(a -> assertThat(a).isCloseTo(14.4089355815382 - chimney, within(2e-3)));
    near(lengths(t).get("ridge"), 4.72);
    near(lengths(t).get("curb-upslope"), 0.3);
    near(lengths(t).get("curb-downslope"), 0.3);
    near(lengths(t).get("curb-side"), 0.33, 0.33);
  }

  /** Pset_RoofCommon.TotalArea and ProjectedArea, PitchAngle 30; the lines by hand for a plan of 8.29 by 6.29 m. */
  @Test
  void hipRoof() throws IOException {
    Takeoff t = takeoff("d10_");
    assertThat(area(t)).isCloseTo(60.2108203433016, within(1e-3));
    assertThat(t.faces().stream().mapToDouble(RoofFace::planAreaM2).sum()).isCloseTo(52.1441, within(1e-3));
    near(lengths(t).get("ridge"), 2);
    near(lengths(t).get("hip"), 4.804, 4.804, 4.804, 4.804);
    near(lengths(t).get("eave"), 6.29, 6.29, 8.29, 8.29);
    assertThat(lengths(t)).containsOnlyKeys("ridge", "hip", "eave");
  }

  /** Pset_RoofCommon.TotalArea and ProjectedArea in square feet, PitchAngle 30. */
  @Test
  void shedRoofInFeet() throws IOException {
    Takeoff t = takeoff("d11_");
    assertThat(area(t)).isCloseTo(53.8860251243651 * SQUARE_FOOT, within(1e-4));
    assertThat(t.faces().get(0).planAreaM2()).isCloseTo(46.6666666666667 * SQUARE_FOOT, within(1e-4));
    assertThat(lengths(t)).containsOnlyKeys("eave", "high-edge", "rake");
  }

  /** Qto_RoofBaseQuantities.GrossArea and ProjectedArea; the ridge by hand. */
  @Test
  void gableAsAdvancedBrep() throws IOException {
    Takeoff t = takeoff("d12_");
    assertThat(area(t)).isCloseTo(175.36709089000496, within(0.01));
    assertThat(t.faces().stream().mapToDouble(RoofFace::planAreaM2).sum()).isCloseTo(124.02, within(0.01));
    near(lengths(t).get("ridge"), 19.5);
    assertThat(lengths(t)).containsOnlyKeys("ridge", "eave", "rake");
  }

  /** Areas by an independent mesher, the ridge by hand. */
  @Test
  void plainGable() throws IOException {
    Takeoff t = takeoff("d13_");
    assertThat(t.faces()).hasSize(2).allSatisfy(f -> assertThat(f.areaM2()).isCloseTo(42.397, within(2e-3)));
    near(lengths(t).get("ridge"), 10.03);
    assertThat(lengths(t)).containsOnlyKeys("ridge", "eave", "rake");
  }

  /** The plain gable with a comment that never closes: an error, not an empty roof. */
  @Test
  void brokenComment() {
    assertThatThrownBy(() -> takeoff("d14_")).isInstanceOf(UnreadableModelException.class).hasMessageContaining(":15:");
  }

  private static Takeoff takeoff(String model) throws IOException {
    return Pipeline.analyse(SharedModels.named(model));
  }

  private static double area(Takeoff t) {
    return t.faces().stream().mapToDouble(RoofFace::areaM2).sum();
  }

  private static Map<String, List<Double>> lengths(Takeoff t) {
    return Comparison.byKind(t.junctions().stream().map(j -> new Pipeline.Line(j.kind(), j.junction().lengthM())).toList());
  }

  private static void near(List<Double> found, double... expected) {
    assertThat(found).isNotNull().hasSize(expected.length);
    for (int i = 0; i < expected.length; i++) {
      assertThat(found.get(i)).as("%s", found).isCloseTo(expected[i], within(BY_HAND));
    }
  }
}
