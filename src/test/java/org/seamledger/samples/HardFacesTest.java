package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.function.Supplier;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamledger.roof.ElementCoverage;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/**
 * Roofs that lose faces or lines easily, by closed forms: kinds and lengths from the house's own expectations, the whole area in faces,
 * nothing lost. Every house and form is chosen by a seed; {@code -Dseamledger.hard=N} says how many of each sort, {@code -Dseamledger.seed}
 * where to start. Sources: the formula beside each expected line.
 */
@Tag("slow")
class HardFacesTest {

  private static final long SEED = Long.getLong("seamledger.seed", 20261128);
  private static final int RUNS = Integer.getInteger("seamledger.hard", 6);
  private static final double TOLERANCE = 1e-3;

  enum Sort {
    VAULT(HardHouses::vault), DOME(HardHouses::dome), CONE(HardHouses::cone), NEAR_COPLANAR(HardHouses::nearCoplanar),
    CROSSING_HIPS(CrossingHips::tee), THIN(HardHouses::thin), CUT_BY_OPENINGS(HardHouses::wallsCutByOpenings),
    SHEET_WALLS(HardHouses::sheetWalls), STUDS(HardHouses::studs), PARAPETS_APART(HardHouses::parapetsApart),
    LAYERS(HardHouses::layers), POST(HardHouses::post), CROSSED_HIPS(CrossingHips::cross), SHORT_ROWS(HardHouses::shortRows);

    private final Function<Random, House> house;

    Sort(Function<Random, House> house) {
      this.house = house;
    }
  }

  @ParameterizedTest
  @EnumSource
  void everyFaceAndLineIsFound(Sort sort) {
    List<String> failures = new ArrayList<>();
    for (int i = 0; i < RUNS; i++) {
      long seed = SEED + i;
      Random random = random(seed, sort);
      House house = sort.house.apply(random);
      Form form = sort == Sort.CROSSED_HIPS ? HardHouses.form(random).made(Form.Make.ROOF) : HardHouses.form(random);
      List<String> differences = check(() -> Pipeline.analyse(house, form), house);
      if (!differences.isEmpty()) {
        failures.add("seed " + seed + " " + house.name() + " " + form + "\n      " + String.join("\n      ", differences));
      }
    }
    assertThat(failures.isEmpty())
        .as(() -> failures.size() + " of " + RUNS + " " + sort + " from seed " + SEED + "\n" + String.join("\n", failures)).isTrue();
  }

  /** Neighbouring seeds, and the sorts at one seed, have nothing in common. */
  private static Random random(long seed, Sort sort) {
    return new Random(new SplittableRandom(new SplittableRandom(seed).nextLong() + sort.ordinal()).nextLong());
  }

  private static List<String> check(Supplier<Takeoff> analysis, House house) {
    Takeoff t;
    try {
      t = analysis.get();
    } catch (RuntimeException e) {
      return List.of(e.toString() + " at " + e.getStackTrace()[0]);
    }
    List<String> differences = new ArrayList<>(Comparison.differences(house.expectedByKind(), Comparison.byKind(
        t.junctions().stream().map(j -> new Pipeline.Line(j.kind(), j.junction().lengthM())).toList()), TOLERANCE));
    double faces = t.faces().stream().mapToDouble(RoofFace::areaM2).sum();
    double upward = t.coverage().stream().mapToDouble(ElementCoverage::upwardM2).sum();
    double lost = t.coverage().stream().mapToDouble(ElementCoverage::lostM2).sum();
    if (lost > TOLERANCE * upward) {
      differences.add("lost " + lost + " of " + upward + " m²");
    }
    if (!house.shells().isEmpty()) {
      double expected = house.expectedAreaM2();
      if (Math.abs(faces - expected) > TOLERANCE * expected) {
        differences.add("faces " + faces + " m², expected " + expected);
      }
      if (t.faces().size() != house.shells().size()) {
        differences.add(t.faces().size() + " faces: "
            + t.faces().stream().map(RoofFace::areaM2).sorted(Comparator.reverseOrder()).limit(8).toList());
      }
    }
    return differences;
  }
}
