package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;

/** Strips beside cuts one by one, which {@link HalfPlaneCutTest} holds to the overlay library, and by the formulas of plane geometry. */
class StripsTest {

  private static final long SEED = 21;

  /** A right triangle of 4 m by 4 m in strips of 1 m: trapezia of 3.5, 2.5 and 1.5 m², and a triangle of 0.5 m². */
  @Test
  void aTriangleInStrips() {
    List<Region> strips = Region.polygon(List.of(new Vec2(0, 0), new Vec2(4, 0), new Vec2(0, 4))).strips(List.of(0.0, 1.0, 2.0, 3.0, 4.0));
    assertThat(strips).extracting(Region::area).usingComparatorForType((a, b) -> Math.abs(a - b) < 1e-12 ? 0 : 1, Double.class)
        .containsExactly(3.5, 2.5, 1.5, 0.5);
  }

  /** Corners and area agree to the last bit, in the same order; together the strips are the area. */
  @Test
  void stripsAreWhatCutsLeave() {
    Random random = new Random(SEED);
    int quick = 0;
    for (int n = 0; n < 2_000; n++) {
      Geometry star = Overlays.ringArea(star(random));
      Region area = Region.of(star);
      List<Double> bounds = bounds(area, random);
      Optional<List<Region>> strips = Strips.of(star, bounds);
      if (strips.isPresent()) {
        quick++;
        List<Region> expected = new ArrayList<>();
        halve(area, bounds, 0, bounds.size() - 1, expected);
        assertThat(strips.get()).as("seed %d, area %d", SEED, n).extracting(Region::rings).isEqualTo(expected.stream().map(Region::rings)
            .toList());
        assertThat(strips.get()).extracting(Region::area).isEqualTo(expected.stream().map(Region::area).toList());
        assertThat(strips.get().stream().mapToDouble(Region::area).sum()).isCloseTo(area.area(), within(1e-4));
      }
    }
    assertThat(quick).as("areas that stay one ring at each cut").isGreaterThan(500);
  }

  @Test
  void whatFallsApartIsLeftToCuts() {
    Geometry comb =
        Overlays.ringArea(List.of(new Vec2(0, 0), new Vec2(8, 0), new Vec2(8, 1), new Vec2(1, 1), new Vec2(1, 3), new Vec2(8, 3),
            new Vec2(8, 4), new Vec2(0, 4)));
    List<Double> bounds = List.of(0.0, 2.0, 8.0);
    assertThat(Strips.of(comb, bounds)).isEmpty();
    assertThat(Region.of(comb).strips(bounds)).extracting(r -> r.parts().size()).containsExactly(1, 2);
  }

  private static void halve(Region part, List<Double> bounds, int from, int to, List<Region> strips) {
    if (to - from > 1) {
      int middle = (from + to) / 2;
      halve(part.cut(1, 0, bounds.get(middle)), bounds, from, middle, strips);
      halve(part.cut(-1, 0, -bounds.get(middle)), bounds, middle, to, strips);
    } else {
      strips.add(part);
    }
  }

  /** Corners round a point, at chance distances; some on lines that are cut at, some a long way out. */
  private static List<Vec2> star(Random random) {
    int corners = 3 + random.nextInt(5);
    double size = random.nextInt(4) == 0 ? 200 : 8;
    List<Vec2> ring = new ArrayList<>();
    for (int i = 0; i < corners; i++) {
      double angle = 2 * Math.PI * (i + 0.8 * random.nextDouble()) / corners;
      double away = size * (0.5 + 0.5 * random.nextDouble());
      double u = away * Math.cos(angle);
      ring.add(new Vec2(random.nextInt(6) == 0 ? Math.rint(u) : u, away * Math.sin(angle)));
    }
    return ring;
  }

  private static List<Double> bounds(Region area, Random random) {
    double step = random.nextBoolean() ? 1 : 0.3 + random.nextDouble();
    List<Double> bounds = new ArrayList<>(List.of(area.minU()));
    for (double u = Math.ceil(area.minU() / step) * step; u < area.maxU() - 0.0005; u += step) {
      if (u > area.minU() + 0.0005) {
        bounds.add(u);
      }
    }
    bounds.add(area.maxU());
    return bounds;
  }
}
