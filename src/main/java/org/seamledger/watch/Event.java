package org.seamledger.watch;

/**
 * Something that happened while watching.
 *
 * @param what one word, such as {@code answered}
 * @param server what the operator calls the server
 * @param project what people call the project, or the empty string
 * @param revision what people call the revision, 0 where it is about none
 * @param detail one line for people, or the empty string
 */
public record Event(String what, String server, String project, int revision, String detail) {

  /** As one line of a log: {@code event=answered server=office project="School" revision=3}. */
  public String line() {
    return "event=" + what + " server=" + server + (project.isEmpty() ? "" : " project=" + quoted(project))
        + (revision == 0 ? "" : " revision=" + revision) + (detail.isEmpty() ? "" : " detail=" + quoted(detail));
  }

  /** Names come from servers: nothing in them may begin a line or end the quotes. */
  private static String quoted(String text) {
    return "\"" + text.replaceAll("[\\p{Cntrl}\\u2028\\u2029\\u202A-\\u202E\\u2066-\\u2069]", " ").replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }
}
