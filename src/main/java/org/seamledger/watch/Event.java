package org.seamledger.watch;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Something that happened while watching.
 *
 * @param at when, by the clock of who watches
 * @param what one word, such as {@code answered}
 * @param server what the operator calls the server
 * @param project what people call the project, or the empty string
 * @param revision what people call the revision, 0 where it is about none
 * @param detail one line for people, or the empty string
 */
public record Event(Instant at, String what, String server, String project, int revision, String detail) {

  /** Names come from servers: nothing in them may begin a line of a log. */
  public Event {
    project = plain(project);
    detail = plain(detail);
  }

  /**
   * What is said, by name and in order: {@code event}, {@code server}, and of {@code project}, {@code revision}, {@code detail} those it
   * has.
   */
  public Map<String, Object> fields() {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("event", what);
    fields.put("server", server);
    if (!project.isEmpty()) {
      fields.put("project", project);
    }
    if (revision != 0) {
      fields.put("revision", revision);
    }
    if (!detail.isEmpty()) {
      fields.put("detail", detail);
    }
    return fields;
  }

  /** As one line of a log, which has the time itself: {@code event=answered server=office project="School" revision=3}. */
  public String line() {
    return "event=" + what + " server=" + server + (project.isEmpty() ? "" : " project=" + quoted(project))
        + (revision == 0 ? "" : " revision=" + revision) + (detail.isEmpty() ? "" : " detail=" + quoted(detail));
  }

  @Override
  public String toString() {
    return line();
  }

  private static String plain(String text) {
    return text.replaceAll("[\\p{Cntrl}\\u2028\\u2029\\u202A-\\u202E\\u2066-\\u2069]", " ");
  }

  /** Nothing in a name may end the quotes. */
  private static String quoted(String text) {
    return "\"" + text.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }
}
