package org.seamledger.journal;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.regex.Pattern;

/** An event as a sender wants it in the record. */
public record EventDraft(String id, String kind, String place, String point, String by, String at, long base, String after, String text) {

  private static final Pattern UUID = Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");
  private static final Pattern POINT = Pattern.compile("[A-Za-z0-9]{1,40}/[A-Za-z0-9-]{1,200}");
  private static final int LONGEST_NAME = 100;
  private static final int LONGEST_TEXT = 4000;

  /** What is wrong with it, in words for who sent it; empty where it can be kept. */
  public Optional<String> fault() {
    Optional<EventKind> known = EventKind.of(kind);
    if (known.isEmpty()) {
      return Optional.of("kind must be one of tick, untick, failure, deviation, photo, weather, lot, note, sign-off, withdrawal");
    }
    if (!isUuid(id) || !after.isEmpty() && !isUuid(after)) {
      return Optional.of("an event's id is a UUID in lower case, such as 123e4567-e89b-42d3-a456-426614174000");
    }
    if (by.isBlank() || by.length() > LONGEST_NAME) {
      return Optional.of("every event needs the name of who it comes from, of at most " + LONGEST_NAME + " characters");
    }
    if (!isInstant(at)) {
      return Optional.of("at must be an instant in UTC, such as 2026-05-04T09:30:00Z");
    }
    if (base < 0 || text.length() > LONGEST_TEXT) {
      return Optional.of("base is the number of the last event seen, 0 for none; text has at most " + LONGEST_TEXT + " characters");
    }
    return fault(known.get());
  }

  private Optional<String> fault(EventKind known) {
    boolean isPlaced = known.isAnswer() && known != EventKind.DEVIATION || known.needsSigner();
    if (isPlaced && place.isEmpty()) {
      return Optional.of("a " + kind + " is about a junction or a node: place is missing");
    }
    if (known.isAnswer() && known != EventKind.DEVIATION && point.isEmpty()) {
      return Optional.of("a " + kind + " is about a hold point or a step: point is missing");
    }
    if (!point.isEmpty() && (!POINT.matcher(point).matches() || !point.startsWith(place + "/"))) {
      return Optional.of("point must be one of the place's own: the place's id, a slash, words");
    }
    return known.needsText() && text.isBlank() ? Optional.of(reason(known)) : Optional.empty();
  }

  private static String reason(EventKind known) {
    return switch (known) {
      case FAILURE -> "a failure needs words: what is wrong, and what was done";
      case DEVIATION -> "a deviation needs its reason";
      case LOT -> "a lot needs the product and its lot number";
      default -> "a " + known.word() + " needs words";
    };
  }

  /** Whether a text is a UUID in lower case, as ids of events are. */
  public static boolean isUuid(String text) {
    return UUID.matcher(text).matches();
  }

  private static boolean isInstant(String text) {
    try {
      return text.length() <= 40 && Instant.parse(text).getEpochSecond() > 0;
    } catch (DateTimeParseException e) {
      return false;
    }
  }
}
