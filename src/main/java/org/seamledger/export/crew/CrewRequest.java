package org.seamledger.export.crew;

import java.util.Optional;
import org.seamledger.weather.WeatherSeries;

/**
 * What somebody wants to know about the order of work.
 *
 * @param people in the crew; 0 for as many as the roof system says
 * @param weather in which it is done; none where nobody states it
 * @param from month and day ({@code 03-14}) of the weather at which the first day is; empty for the weather's beginning
 * @param days of the weather that are shown
 */
public record CrewRequest(int people, Optional<WeatherSeries> weather, String from, int days) {

  /** What a request says that says nothing. */
  public static final CrewRequest DEFAULT = new CrewRequest(0, Optional.empty(), "", 7);
  /** Most people in a crew. */
  public static final int MOST_PEOPLE = 100;
  /** Most days of weather that are shown. */
  public static final int MOST_DAYS = 31;

  /** @throws IllegalArgumentException with a line that says what is wrong */
  public CrewRequest {
    if (people < 0 || people > MOST_PEOPLE) {
      throw new IllegalArgumentException("crew is a number of people from 1 to " + MOST_PEOPLE + ", not " + people);
    }
    if (days < 1 || days > MOST_DAYS) {
      throw new IllegalArgumentException("days is a number from 1 to " + MOST_DAYS + ", not " + days);
    }
    if (!from.isEmpty() && !from.matches("\\d\\d-\\d\\d")) {
      throw new IllegalArgumentException("from is a month and a day such as 03-14, not \"" + from + "\"");
    }
    if (!from.isEmpty() && (weather.isEmpty() || weather.get().byHand())) {
      throw new IllegalArgumentException("from says at which day of a weather file the work begins: it goes with a file");
    }
  }
}
