package org.seamledger.bcf;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/** Dates as files have them. */
public final class BcfDate {

  private BcfDate() {
  }

  /** A day, or a time with or without its offset, in ISO 8601; without offset it is UTC, as BCF has it. To the second. */
  public static Optional<Instant> instant(String text) {
    try {
      Instant at = text.length() <= "2024-05-31".length() ? LocalDate.parse(text).atStartOfDay().toInstant(ZoneOffset.UTC)
          : text.matches(".*(Z|[+-]\\d\\d:?\\d\\d)") ? OffsetDateTime.parse(withColon(text)).toInstant()
          : LocalDateTime.parse(text).toInstant(ZoneOffset.UTC);
      return isWritable(at) ? Optional.of(at.truncatedTo(ChronoUnit.SECONDS)) : Optional.empty();
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static String withColon(String text) {
    return text.replaceFirst("([+-]\\d\\d)(\\d\\d)$", "$1:$2");
  }

  /** Years that dates of XML Schema have in four digits. */
  private static boolean isWritable(Instant at) {
    int year = at.atOffset(ZoneOffset.UTC).getYear();
    return year > 0 && year < 10_000;
  }
}
