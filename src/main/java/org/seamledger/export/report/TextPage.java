package org.seamledger.export.report;

import java.util.ArrayList;
import java.util.List;

/** Lines of text of at most {@link #WIDTH} columns, for terminals and printers; no line ends in blanks. */
public final class TextPage {

  static final int WIDTH = 100;

  private final StringBuilder text = new StringBuilder();

  public TextPage line(String line) {
    text.append(line.stripTrailing()).append('\n');
    return this;
  }

  public TextPage blank() {
    return line("");
  }

  /** A section's title, after a blank line. */
  public TextPage title(String title) {
    return blank().line(title).line("-".repeat(title.length()));
  }

  /** A paragraph broken between words, its first line after {@code first}, the others after {@code rest}. */
  public TextPage paragraph(String first, String rest, String words) {
    String prefix = first;
    for (String line : wrapped(words, WIDTH - Math.max(first.length(), rest.length()))) {
      line(prefix + line);
      prefix = rest;
    }
    return this;
  }

  private static List<String> wrapped(String words, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : words.strip().split("\\s+")) {
      if (line.length() > 0 && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() > 0 ? " " : "").append(word);
    }
    lines.add(line.toString());
    return lines;
  }

  public String text() {
    return text.toString();
  }
}
