package org.seamledger.finding;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;

/**
 * That somebody knows of a finding and lets it stand.
 *
 * @param by who, never blank
 * @param when a day, or a time with its offset, in ISO 8601: {@code 2024-05-31}, {@code 2024-05-31T14:00:00Z}; empty where it is not known
 * @param reason for people, never blank
 */
public record Acceptance(String by, String when, String reason) {

  /** @throws IllegalArgumentException where name or reason is missing, or the time is none */
  public Acceptance {
    if (by.isBlank() || reason.isBlank()) {
      throw new IllegalArgumentException("a finding is accepted by somebody, with a reason");
    }
    if (!when.isEmpty() && !isTime(when)) {
      throw new IllegalArgumentException("when a finding was accepted is a day or a time in ISO 8601, not " + when);
    }
  }

  /** Whether a text says when. */
  public static boolean isTime(String text) {
    try {
      if (text.length() <= "2024-05-31".length()) {
        LocalDate.parse(text);
      } else {
        OffsetDateTime.parse(text);
      }
      return true;
    } catch (DateTimeException e) {
      return false;
    }
  }
}
