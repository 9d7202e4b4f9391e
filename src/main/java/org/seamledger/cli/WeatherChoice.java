package org.seamledger.cli;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.seamledger.export.crew.CrewJob;
import org.seamledger.export.crew.CrewRequest;
import org.seamledger.finding.SettingsFile;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.weather.WeatherFormatException;
import org.seamledger.weather.WeatherSeries;
import org.seamledger.weather.WeatherWords;
import picocli.CommandLine.Option;

/** The weather that a command is told: a file, or what somebody reads on the roof. */
final class WeatherChoice {

  @Option(names = "--weather", paramLabel = "FILE",
      description = "Weather of the days to come: EPW, or a table of hours (time,air_C,humidity_%%,sun_W/m2,wind_m/s,rain_mm …).")
  private Path file;

  @Option(names = "--from", paramLabel = "MM-DD", description = "Day of the weather file on which the work begins (default: its first).")
  private String from = "";

  @Option(names = "--days", paramLabel = "N", description = "Days of weather to show (default: 7).")
  private int days = CrewRequest.DEFAULT.days();

  @Option(names = "--air", paramLabel = "TEMPERATURE", description = "Weather of now by hand: the air, such as 12C or 54F.")
  private String air;

  @Option(names = "--humidity", paramLabel = "PERCENT", description = "Its relative humidity, such as 80.")
  private String humidity;

  @Option(names = "--sun", paramLabel = "SUN", description = "none, overcast, hazy, full, or W/m2 (default: none).")
  private String sun;

  @Option(names = "--wind", paramLabel = "SPEED", description = "Such as 5mph or 2m/s (default: 2m/s).")
  private String wind;

  @Option(names = "--metal", paramLabel = "TEMPERATURE", description = "Of the metal, as measured; else it is estimated.")
  private String metal;

  /** @throws UsageException where the weather can't be used, with every mistake's place */
  CrewRequest request(Integer people) {
    if (people != null && people < 1) {
      throw new UsageException("--crew is a number of people from 1 to " + CrewRequest.MOST_PEOPLE + ", not " + people);
    }
    try {
      return new CrewRequest(people == null ? 0 : people, series(), from, days);
    } catch (IllegalArgumentException e) {
      throw new UsageException((e.getMessage().startsWith("weather") ? "" : "--") + e.getMessage());
    }
  }

  /** @throws UsageException where the weather has no such day */
  CrewJob job(Takeoff takeoff, CrewRequest request) {
    try {
      return CrewJob.of(takeoff, request);
    } catch (IllegalArgumentException e) {
      throw new UsageException(e.getMessage());
    }
  }

  private Optional<WeatherSeries> series() {
    Map<String, String> words = new TreeMap<>();
    String[] values = {air, humidity, sun, wind, metal};
    for (int i = 0; i < values.length; i++) {
      if (values[i] != null) {
        words.put(WeatherWords.NAMES.get(i), values[i]);
      }
    }
    if (file == null) {
      return words.isEmpty() ? Optional.empty() : Optional.of(WeatherSeries.constant(WeatherWords.read(words)));
    }
    if (!words.isEmpty()) {
      throw new UsageException(
          "--weather is a file of weather, --" + words.keySet().iterator().next() + " weather by hand: give one of them");
    }
    return Optional.of(read());
  }

  private WeatherSeries read() {
    String name = String.valueOf(file.getFileName());
    try {
      return WeatherSeries.parse(SettingsFile.bytes(file), name);
    } catch (WeatherFormatException e) {
      throw new UsageException(e.getMessage());
    } catch (NoSuchFileException e) {
      throw new UsageException(name + ": no such file");
    } catch (IOException e) {
      throw new UsageException(
          name + ": can't be read" + (e.getMessage() == null || e.getMessage().contains("/") ? "" : ": " + e.getMessage()));
    }
  }
}
