package org.seamledger.export.crew;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.seamledger.export.json.JsonOutput;
import org.seamledger.weather.Hindrance;
import org.seamledger.weather.SealantClass;
import org.seamledger.weather.SealingHour;
import org.seamledger.weather.SealingWindows;

/** Windows as JSON: hour by hour, and the stretches of each class. What isn't known or doesn't end is null. */
final class WindowsJson {

  private static final int HOURS = 24;

  private WindowsJson() {
  }

  static void write(CrewJob job, JsonOutput json) throws IOException {
    SealingWindows windows = job.windows().orElseThrow();
    List<SealingHour> shown =
        windows.hours().subList(0, windows.byHand() ? 1 : Math.min(windows.hours().size(), job.request().days() * HOURS));
    json.object("weather", () -> {
      json.word("source", windows.source());
      json.flag("byHand", windows.byHand());
      json.word("upright", windows.upright().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
      json.objects("windows", Arrays.asList(SealantClass.values()), c -> {
        json.word("class", c.word());
        json.objects("open", SealingWindows.windows(shown, c), w -> {
          json.word("from", shown.get(w.from()).weather().label());
          json.count("hours", w.to() - w.from());
        });
      });
      json.objects("hours", shown, h -> hour(h, json));
    });
  }

  private static void hour(SealingHour hour, JsonOutput json) throws IOException {
    json.word("time", hour.weather().label());
    number("airC", hour.weather().airC(), json);
    number("humidity", hour.weather().humidity(), json);
    number("dewPointC", hour.dewPointC(), json);
    number("metalC", hour.metalC(), json);
    for (SealantClass c : SealantClass.values()) {
      List<String> against = hour.against().get(c).stream().map(Hindrance::word).toList();
      json.words("against-" + c.word(), against);
    }
    number("skinHours", hour.skinHours(), json);
    number("coverHours", hour.capHours(), json);
  }

  private static void number(String field, double value, JsonOutput json) throws IOException {
    if (Double.isFinite(value)) {
      json.number(field, value);
    } else {
      json.wordOrNull(field, "");
    }
  }
}
