package org.seamledger.sequence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.weather.SealingWindows;
import org.seamledger.weather.WeatherHour;

/** A crew in weather that lets it seal for two hours a day. */
class CrewWindowsTest {

  private static final int OPENS = 10;
  private static final int CLOSES = 12;
  private static final int DAYS = 200;

  private static List<WeatherHour> weather() {
    List<WeatherHour> hours = new ArrayList<>();
    for (int i = 0; i < DAYS * 24; i++) {
      int hour = i % 24;
      double rain = hour >= OPENS && hour < CLOSES ? 0 : 2;
      hours.add(new WeatherHour(1 + i / 24 / 28 % 12, 1 + i / 24 % 28, hour, 15, 0.5, 101_325, 0, Double.NaN, 1, 2, rain, Double.NaN));
    }
    return hours;
  }

  @Test
  void nothingIsSealedOutsideTheWindowsAndNothingIsLeftOut() {
    Takeoff takeoff = Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples", "dairy.ifc"))), Progress.NONE);
    SealingWindows windows = SealingWindows.of("made up", false, weather(), takeoff.system());
    CrewPlan dry = CrewPlan.of(takeoff.sequence(), takeoff.system(), 1, Optional.empty());
    CrewPlan plan = CrewPlan.of(takeoff.sequence(), takeoff.system(), 1, Optional.of(windows));
    assertThat(plan.tasks()).anyMatch(t -> !t.step().seals().isEmpty() && !t.ends());
    for (CrewPlan.Task t : plan.tasks()) {
      if (!t.step().seals().isEmpty() && t.day() < DAYS) {
        assertThat(t.from()).as(t.toString()).isGreaterThanOrEqualTo(OPENS - 1e-6);
        assertThat(t.to()).as(t.toString()).isLessThanOrEqualTo(CLOSES + 1e-6);
      }
    }
    assertThat(plan.tasks().stream().filter(CrewPlan.Task::begins)).hasSameSizeAs(takeoff.sequence().steps());
    assertThat(plan.tasks().stream().filter(CrewPlan.Task::ends)).hasSameSizeAs(takeoff.sequence().steps());
    Map<String, Double> hours = hours(plan);
    hours(dry).forEach((step, h) -> assertThat(hours.get(step)).as(step).isCloseTo(h, within(1e-6)));
    Map<String, Double> done = new LinkedHashMap<>();
    plan.tasks().stream().filter(CrewPlan.Task::ends).forEach(t -> done.put(t.step().id(), t.day() * 24 + t.to()));
    plan.tasks().stream().filter(CrewPlan.Task::begins).forEach(t -> t.step().after().forEach(
        before -> assertThat(t.day() * 24 + t.from()).as(t.step().id()).isGreaterThanOrEqualTo(done.get(before) - 1e-6)));
  }

  private static Map<String, Double> hours(CrewPlan plan) {
    Map<String, Double> hours = new LinkedHashMap<>();
    plan.tasks().forEach(t -> hours.merge(t.step().id(), t.to() - t.from(), Double::sum));
    return hours;
  }
}
