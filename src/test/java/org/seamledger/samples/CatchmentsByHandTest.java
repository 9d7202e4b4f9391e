package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;
import static org.seamledger.samples.Pitch.per12;
import static org.seamledger.samples.Pitch.pitch;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.seamledger.samples.House.Through;
import org.seamledger.samples.JoinedRoofs.Meeting;
import org.seamledger.takeoff.Takeoff;

/** Catchments of roofs against plan areas by hand: elementary geometry, the formula beside each. Square metres. */
@Tag("slow")
class CatchmentsByHandTest {

  private static final double NEAR = 2e-3;

  private static Takeoff analyse(House house) {
    return Pipeline.analyse(house, Form.PLAIN);
  }

  /** What comes to each junction of a kind, ascending; nothing left out. */
  private static List<Double> arriving(Takeoff t, String kind) {
    return t.junctions().stream().filter(j -> j.kind().equals(kind)).map(j -> t.drainage().arriving().get(j.junction().id()))
        .map(from -> from == null ? 0.0 : from.values().stream().mapToDouble(Double::doubleValue).sum()).sorted().toList();
  }

  private static void assertArriving(Takeoff t, String kind, double... areas) {
    List<Double> found = arriving(t, kind);
    assertThat(found).as(kind).hasSize(areas.length);
    for (int i = 0; i < areas.length; i++) {
      assertThat(found.get(i)).as(kind + " " + found).isCloseTo(areas[i], offset(NEAR));
    }
  }

  /** What leaves, by kind of the junction that it leaves over. */
  private static Map<String, Double> leaving(Takeoff t) {
    Map<String, String> kinds = t.junctions().stream().collect(Collectors.toMap(j -> j.junction().id(), j -> j.kind()));
    Map<String, Double> sums = new TreeMap<>();
    t.drainage().leaves().forEach((junction, area) -> sums.merge(kinds.get(junction), area, Double::sum));
    return sums;
  }

  @Test
  void gables() {
    assertArriving(analyse(Roofs.gable(8, 12, pitch(30))), "eave", 48, 48);
    // The ridge lies where both planes are as high: x · tan 22° = (9 − x) · tan 47°.
    double x = 9 * Math.tan(Math.toRadians(47)) / (Math.tan(Math.toRadians(22)) + Math.tan(Math.toRadians(47)));
    assertArriving(analyse(Roofs.gable(9, 11, pitch(22), pitch(47))), "eave", (9 - x) * 11, x * 11);
  }

  @Test
  void hip() {
    // Ends: triangles 7 × 3.5 / 2; sides: trapezoids (11 + 4) / 2 × 3.5.
    assertArriving(analyse(Roofs.hip(7, 11, per12(6))), "eave", 12.25, 12.25, 26.25, 26.25);
  }

  @Test
  void valleyOfAnL() {
    // To each side of the valley, over half the width, a triangle h × h / 2.
    Takeoff t = analyse(JoinedRoofs.ell(14, 11, 6, pitch(35)));
    assertArriving(t, "valley", 9);
    assertThat(leaving(t).get("valley")).isCloseTo(9, offset(NEAR));
    assertThat(t.drainage().trapped()).isEmpty();
  }

  @Test
  void levelValleyOfAButterfly() {
    assertArriving(analyse(Roofs.butterfly(10, 14, per12(1))), "level-valley", 140);
  }

  @Test
  void chimney() {
    // Behind it a strip 0.9 wide from its back, 2.2 + 0.6 / 2 from the eave, to the ridge at 4; half of it goes round each side.
    Takeoff t = analyse(Roofs.gable(8, 12, pitch(35)).chimney("stack", "south", 4, 2.2, 0.9, 0.6, 1.3, Through.WHOLE));
    double behind = 0.9 * (4 - 2.5);
    assertArriving(t, "curb-upslope", behind);
    assertArriving(t, "curb-side", behind / 2, behind / 2);
    assertArriving(t, "curb-downslope", 0);
    assertArriving(t, "eave", 48 - 0.54, 48);
  }

  @Test
  void dormer() {
    // Half 0.9 wide; its eave, 1.1 above the main roof at the front, 1.2 from the main eave, meets it at low, its ridge at high.
    double low = 1.2 + 1.1 / Math.tan(Math.toRadians(40));
    double run = 0.9 * Math.tan(Math.toRadians(35)) / Math.tan(Math.toRadians(40));
    double main = 0.9 * (4.5 - (low + low + run) / 2);
    double side = 0.9 * run / 2;
    for (Meeting meeting : Meeting.values()) {
      Takeoff t = analyse(
          JoinedRoofs.gableDormer(Roofs.gable(9, 12, pitch(40)), "south", "dormer", 5, 1.8, 1.2, 1.1, pitch(35), meeting));
      assertArriving(t, "valley", main + side, main + side);
      assertArriving(t, "sidewall", main + side, main + side);
      assertThat(leaving(t)).containsOnlyKeys("eave");
    }
  }

  @Test
  void upperRoofOnLower() {
    // Lower 4 m, upper 5 m deep, both 9 m long: all of it leaves over the lower eave.
    Takeoff t = analyse(JoinedRoofs.step(4, 5, 9, pitch(15), 1.2));
    assertThat(t.drainage().drops().values()).singleElement()
        .satisfies(to -> assertThat(to.values()).singleElement().satisfies(a -> assertThat(a).isCloseTo(45, offset(NEAR))));
    assertThat(t.drainage().leaves().values()).singleElement().satisfies(a -> assertThat(a).isCloseTo(81, offset(NEAR)));
  }

  @Test
  void wallsAtTheLowEnd() {
    // A wall along the low end leads to both ends; parapets all round keep everything.
    assertThat(leaving(analyse(WalledRoofs.againstLowWall(4, 8, pitch(10), 0.9))).get("low-wall")).isCloseTo(32, offset(NEAR));
    Takeoff closed = analyse(WalledRoofs.parapets(12, 18, per12(0.25), 0.5));
    assertThat(closed.drainage().held().values()).singleElement().satisfies(a -> assertThat(a).isCloseTo(216, offset(NEAR)));
    assertThat(closed.findings()).anySatisfy(f -> assertThat(f.code()).isEqualTo("drainage/no-outlet"));
  }
}
