package org.seamledger.export.crew;

import java.util.List;
import java.util.Optional;
import org.seamledger.sequence.CrewPlan;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.weather.SealingWindows;
import org.seamledger.weather.WeatherHour;
import org.seamledger.weather.WeatherSeries;

/**
 * The order of work on a roof for a crew, in some weather.
 *
 * @param windows from the first day on; none where the weather isn't known
 */
public record CrewJob(Takeoff takeoff, CrewRequest request, CrewPlan plan, Optional<SealingWindows> windows) {

  /** @throws IllegalArgumentException where the weather has no such day */
  public static CrewJob of(Takeoff takeoff, CrewRequest request) {
    Optional<SealingWindows> windows = request.weather().map(w -> windows(w, takeoff, request.from()));
    return new CrewJob(takeoff, request, CrewPlan.of(takeoff.sequence(), takeoff.system(), request.people(), windows), windows);
  }

  private static SealingWindows windows(WeatherSeries weather, Takeoff takeoff, String from) {
    if (from.isEmpty()) {
      return SealingWindows.of(weather, takeoff.system());
    }
    List<WeatherHour> hours = weather.from(Integer.parseInt(from.substring(0, 2)), Integer.parseInt(from.substring(3)));
    if (hours.isEmpty()) {
      throw new IllegalArgumentException(weather.source() + " has no hour of the day " + from);
    }
    return SealingWindows.of(weather.source(), weather.byHand(), hours, takeoff.system());
  }

  /** The date of a day of work in the weather; empty where it isn't known. */
  public String date(int day) {
    return windows.filter(w -> !w.byHand()).flatMap(w -> w.onDay(day).stream().findFirst()).map(h -> h.weather().date()).orElse("");
  }
}
