package org.seamledger.weather;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Hours of weather one after the other.
 *
 * @param source the file's name, or {@code by hand}
 * @param byHand whether one state of the weather stands for all hours
 */
public record WeatherSeries(String source, boolean byHand, List<WeatherHour> hours) {

  /** Hours that weather by hand is taken to last: as long as a bead may take at worst. */
  private static final int BY_HAND = 240;

  public WeatherSeries {
    hours = List.copyOf(hours);
  }

  /**
   * Reads a weather file in UTF-8, or else in Latin 1, as names of places in older ones are written.
   *
   * @throws WeatherFormatException as {@link #parse(String, String)}
   */
  public static WeatherSeries parse(byte[] bytes, String file) {
    try {
      return parse(StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString(), file);
    } catch (CharacterCodingException e) {
      return parse(new String(bytes, StandardCharsets.ISO_8859_1), file);
    }
  }

  /**
   * Reads a weather file: EPW, or a table with a head line.
   *
   * @param file the name for messages
   * @throws WeatherFormatException if it can't be used, with the place of each mistake
   */
  public static WeatherSeries parse(String text, String file) {
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    List<String> lines = plain.lines().toList();
    if (lines.isEmpty()) {
      throw new WeatherFormatException(file,
          List.of(new WeatherFormatException.Fault(1, 1, "an EPW file, or a table of hours with a head line", "nothing")));
    }
    return new WeatherSeries(file, false,
        lines.get(0).startsWith(EpwReader.BEGIN) ? EpwReader.read(lines, file) : HourlyCsvReader.read(lines, file));
  }

  /** The weather of now, as somebody states it, for as long as it may matter; its sun stays as it is. */
  public static WeatherSeries constant(WeatherHour now) {
    return new WeatherSeries("by hand", true, Collections.nCopies(BY_HAND, now));
  }

  /**
   * The hours from the first one of a day on, and after the last the first ones again: a file of a typical year goes round.
   *
   * @return nothing where no hour is of that day
   */
  public List<WeatherHour> from(int month, int day) {
    for (int i = 0; i < hours.size(); i++) {
      if (hours.get(i).month() == month && hours.get(i).day() == day) {
        List<WeatherHour> turned = new ArrayList<>(hours.subList(i, hours.size()));
        turned.addAll(hours.subList(0, i));
        return turned;
      }
    }
    return List.of();
  }

  /** One hour from plain values: at a time of day, NaN for what isn't known. */
  public static WeatherHour hour(int hour, double airC, double humidity, double sunWm2, double cloud, double windMs, double metalC) {
    return new HourDraft().set(HourDraft.Field.AIR, airC).set(HourDraft.Field.HUMIDITY, humidity).set(HourDraft.Field.SUN, sunWm2)
        .set(HourDraft.Field.CLOUD, cloud).set(HourDraft.Field.WIND, windMs).set(HourDraft.Field.METAL, metalC)
        .at(LocalDateTime.of(2000, 1, 1, hour, 0));
  }
}
