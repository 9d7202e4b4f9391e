package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.seamledger.detail.KindedJunction;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/**
 * The lines around a face add up to the perimeter of its exposed area. Both sides are taken here from what the result shows: the perimeter
 * from the corners of the face's area, the sum from the junctions' paths.
 */
@Tag("slow")
class PerimeterLawTest {

  private static final long SEED = Long.getLong("seamledger.seed", System.nanoTime());
  private static final int HOUSES = Integer.getInteger("seamledger.houses", 25);

  @Test
  void junctionsAroundAFaceAddUpToItsPerimeter() {
    List<String> failures = new ArrayList<>();
    for (int i = 0; i < HOUSES; i++) {
      RandomHouses chance = new RandomHouses(new Random(SEED + i));
      House house = chance.house();
      failures.addAll(check("seed " + (SEED + i) + ": " + house.name(), Pipeline.analyse(house, chance.form())));
    }
    assertThat(failures).as(() -> "from seed " + SEED + "\n" + String.join("\n", failures)).isEmpty();
  }

  @Test
  void theSamplesKeepIt() {
    List<String> failures = new ArrayList<>();
    Estate.samples().forEach(s -> failures.addAll(check(s.file(), Pipeline.analyse(s.house(), s.form()))));
    assertThat(failures).as(() -> String.join("\n", failures)).isEmpty();
  }

  private static List<String> check(String name, Takeoff t) {
    List<String> failures = new ArrayList<>();
    for (RoofFace face : t.faces()) {
      double perimeter = face.facets().stream().flatMap(f -> f.area().rings().stream()).mapToDouble(r -> length(r.points())).sum();
      double sum = t.junctions().stream().filter(j -> j.junction().faces().contains(face.id())).mapToDouble(PerimeterLawTest::share).sum();
      if (Math.abs(sum - perimeter) > 2e-3 * perimeter) {
        failures.add(name + ", face " + face.id() + ": perimeter " + perimeter + ", junctions " + sum + " "
            + t.junctions().stream().filter(j -> j.junction().faces().contains(face.id()))
                .map(j -> j.kind() + " " + j.junction().lengthM()).collect(Collectors.joining(", ")));
      }
    }
    return failures;
  }

  /** A round thing that breaks through two faces has one line, half on each where it stands across their ridge. */
  private static double share(KindedJunction j) {
    return j.kind().equals("pipe") ? j.junction().lengthM() / j.junction().faces().size() : j.junction().lengthM();
  }

  private static double length(List<org.seamledger.geometry.Vec2> ring) {
    double sum = 0;
    for (int i = 0; i < ring.size(); i++) {
      sum += ring.get(i).distance(ring.get((i + 1) % ring.size()));
    }
    return sum;
  }
}
