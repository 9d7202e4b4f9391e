package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.seamledger.samples.House.at;
import static org.seamledger.samples.Pitch.per12;
import static org.seamledger.samples.Pitch.pitch;

import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.geometry.Vec2;
import org.seamledger.sequence.JobSequence;
import org.seamledger.sequence.Step;
import org.seamledger.takeoff.Takeoff;

/**
 * How many steps simple roofs take, counted by hand from the details: on each face underlayment, panels, seams; along an eave trim and
 * panel ends; along a rake cleat, zee and trim; along a ridge or hip closures and cap; a piece at each corner.
 */
class StepCountsTest {

  private static final long FIRST_SEED = 900;
  private static final int HOUSES = Integer.getInteger("steps.houses", 36);

  private static List<Step> steps(House house) {
    return steps(house, Form.PLAIN);
  }

  private static List<Step> steps(House house, Form form) {
    Takeoff takeoff = Pipeline.analyse(house, form);
    JobSequence sequence = takeoff.sequence();
    assertThat(sequence.cycle()).isEmpty();
    Set<String> done = new HashSet<>();
    for (Step s : sequence.steps()) {
      assertThat(done).as(s.id()).containsAll(s.after());
      done.add(s.id());
    }
    return sequence.steps();
  }

  /** Houses of all families by chance: there is an order in which each can be built. {@code -Dsteps.houses=1000} tries more. */
  @Test
  void everyHouseCanBeBuilt() {
    for (long seed = FIRST_SEED; seed < FIRST_SEED + HOUSES; seed++) {
      RandomHouses random = new RandomHouses(new Random(seed * 7919));
      House house = random.house();
      try {
        steps(house, random.form());
      } catch (AssertionError e) {
        throw new AssertionError("seed " + seed + ", " + house.name(), e);
      }
    }
  }

  private static long count(List<Step> steps, String work) {
    return steps.stream().filter(s -> s.work().id().equals(work)).count();
  }

  /** 2 × 3 on faces, 2 × 2 at eaves, 4 × 3 at rakes, 2 at the ridge, 4 + 2 corners: 30, whatever its size. */
  @ParameterizedTest
  @CsvSource({"8, 12, 30", "5, 21, 18", "11, 7, 45"})
  void gable(double span, double length, double degrees) {
    List<Step> steps = steps(Roofs.gable(span, length, pitch(degrees)));
    assertThat(steps).hasSize(30);
    assertThat(steps.stream().filter(Step::locked).map(s -> s.work().id())).containsExactly("cover");
  }

  /** n faces that rise to a point: 3n on faces, 2n at eaves, 2n along hips, n at their feet, one at the top: 8n + 1; n caps are locked. */
  @ParameterizedTest
  @CsvSource({"3, 4, 6", "4, 5, 9", "5, 3.5, 4", "8, 3.2, 6"})
  void hipsToAPoint(int n, double apothem, double per12) {
    House house = new House("pyramid");
    double corner = apothem / StrictMath.cos(Math.PI / n);
    for (int i = 0; i < n; i++) {
      double a = 2 * i * Math.PI / n;
      Slope slope = Slope.rising(apothem * StrictMath.cos(a), apothem * StrictMath.sin(a), 3, -StrictMath.cos(a), -StrictMath.sin(a),
          per12(per12));
      house.roof("face " + (i + 1), slope, 0.2, polar(corner, a - Math.PI / n), polar(corner, a + Math.PI / n), at(0, 0));
    }
    List<Step> steps = steps(house);
    assertThat(count(steps, "closures")).isEqualTo(n);
    assertThat(count(steps, "cover")).isEqualTo(n);
    assertThat(count(steps, "corner-over")).isEqualTo(1);
    assertThat(steps).hasSize(8 * n + 1);
    assertThat(steps.stream().filter(Step::locked)).hasSize(n);
    assertThat(steps.get(steps.size() - 1).work().id()).isEqualTo("corner-over");
  }

  private static Vec2 polar(double r, double a) {
    return at(r * StrictMath.cos(a), r * StrictMath.sin(a));
  }

  /** Each hip's closures wait for the seams of both its faces, and its cap for the closures and the piece at its foot. */
  @Test
  void whatAHipWaitsFor() {
    List<Step> steps = steps(Roofs.hip(6, 6, pitch(35)));
    steps.stream().filter(s -> s.work().id().equals("closures"))
        .forEach(s -> assertThat(s.after().stream().filter(id -> id.endsWith("/seams"))).hasSize(2));
    steps.stream().filter(s -> s.work().id().equals("cover"))
        .forEach(s -> assertThat(s.after()).contains(s.place() + "/closures").anyMatch(id -> id.endsWith("/corner")));
  }
}
