package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.SharedModels;
import org.seamledger.drainage.WaterPlace;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.Facet;
import org.seamledger.takeoff.Takeoff;

/**
 * Rain that falls on a roof leaves it or stays on it, all of it and no more. Plan areas are taken here from the corners of the faces; every
 * face and every line passes on what it gets.
 */
@Tag("slow")
class WaterBalanceTest {

  private static final long SEED = Long.getLong("seamledger.seed", System.nanoTime());
  private static final int HOUSES = Integer.getInteger("seamledger.houses", 25);
  private static final double SHARE = 1e-3;

  static List<ClosedForms.Case> cases() {
    return ClosedForms.all();
  }

  /** Without the one that is no valid file. */
  static List<Path> shared() throws IOException {
    return SharedModels.all().stream().filter(f -> !f.getFileName().toString().contains("broken")).toList();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void closedForms(ClosedForms.Case c) {
    assertThat(unbalanced(c.name(), Pipeline.analyse(c.house().get(), Form.PLAIN))).isEmpty();
  }

  @Test
  void roofsByChance() {
    List<String> failures = new ArrayList<>();
    for (int i = 0; i < HOUSES; i++) {
      RandomHouses chance = new RandomHouses(new Random(SEED + i));
      House house = chance.house();
      failures.addAll(unbalanced("seed " + (SEED + i) + ": " + house.name(), Pipeline.analyse(house, chance.form())));
    }
    assertThat(failures).as(() -> "from seed " + SEED).isEmpty();
  }

  @Test
  void samples() {
    List<String> failures = new ArrayList<>();
    Estate.samples().forEach(s -> failures.addAll(unbalanced(s.file(), Pipeline.analyse(s.house(), s.form()))));
    assertThat(failures).isEmpty();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("shared")
  void sharedModels(Path model) {
    assertThat(unbalanced(model.toString(), Pipeline.analyse(model))).isEmpty();
  }

  static List<String> unbalanced(String name, Takeoff t) {
    List<String> failures = new ArrayList<>(WaterLedger.unbalanced(name, t));
    SortedMap<WaterPlace, Double> in = new TreeMap<>();
    SortedMap<WaterPlace, Double> out = new TreeMap<>();
    t.faces().forEach(f -> in.put(WaterPlace.face(f.id()), f.facets().stream().mapToDouble(WaterBalanceTest::planArea).sum()));
    double rain = in.values().stream().mapToDouble(Double::doubleValue).sum();
    t.drainage().path().forEach((from, all) -> all.forEach((to, amount) -> {
      out.merge(from, amount, Double::sum);
      in.merge(to, amount, Double::sum);
    }));
    t.drainage().leaves().forEach((junction, amount) -> out.merge(WaterPlace.junction(junction), amount, Double::sum));
    double stays = sum(t.drainage().trapped());
    double gone = sum(t.drainage().leaves());
    if (Math.abs(gone + stays - rain) > SHARE * rain) {
      failures.add(name + ": " + gone + " leaves, " + stays + " stays, " + rain + " falls");
    }
    double passed = in.keySet().stream().mapToDouble(p -> in.get(p) - out.getOrDefault(p, 0.0)).sum();
    if (Math.abs(passed - stays) > SHARE * rain) {
      failures.add(name + ": places keep " + passed + ", stays " + stays);
    }
    in.forEach((place, amount) -> {
      if (out.getOrDefault(place, 0.0) > amount + SHARE * rain) {
        failures.add(name + ": " + place + " gets " + amount + " and gives " + out.get(place));
      }
    });
    return failures;
  }

  private static double sum(Map<String, Double> amounts) {
    return amounts.values().stream().mapToDouble(Double::doubleValue).sum();
  }

  /** By the corners' coordinates in plan (shoelace formula). */
  private static double planArea(Facet facet) {
    double twice = 0;
    for (Region.Ring ring : facet.area().rings()) {
      List<Vec2> p = ring.points();
      for (int i = 0; i < p.size(); i++) {
        Vec3 a = facet.plane().at(p.get(i).u(), p.get(i).v());
        Vec3 b = facet.plane().at(p.get((i + 1) % p.size()).u(), p.get((i + 1) % p.size()).v());
        twice += a.x() * b.y() - b.x() * a.y();
      }
    }
    return twice / 2;
  }
}
