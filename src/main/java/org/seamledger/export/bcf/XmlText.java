package org.seamledger.export.bcf;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.seamledger.export.wording.OneLine;

/** An XML document being written, element by element. Every text is escaped, and what XML has no way to write becomes a blank. */
final class XmlText {

  private final StringBuilder out = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
  private int depth;

  /** What stands inside an element. */
  @FunctionalInterface
  interface Content {
    void write();
  }

  /** @param attributes name, value, name, value … */
  void element(String name, List<String> attributes, Content content) {
    open(name, attributes);
    out.append(">\n");
    depth++;
    content.write();
    depth--;
    indent();
    out.append("</").append(name).append(">\n");
  }

  void element(String name, Content content) {
    element(name, List.of(), content);
  }

  /** One with nothing in it. */
  void empty(String name, List<String> attributes) {
    open(name, attributes);
    out.append("/>\n");
  }

  /** One with a text of one line, left out where the text is blank. */
  void text(String name, String text) {
    raw(name, escaped(OneLine.of(text)));
  }

  /** One with a text of several lines. */
  void lines(String name, List<String> lines) {
    raw(name, lines.stream().map(OneLine::of).map(XmlText::escaped).collect(Collectors.joining("\n")).strip());
  }

  private void raw(String name, String escaped) {
    if (!escaped.isBlank()) {
      indent();
      out.append('<').append(name).append('>').append(escaped).append("</").append(name).append(">\n");
    }
  }

  private void open(String name, List<String> attributes) {
    indent();
    out.append('<').append(name);
    for (int i = 0; i + 1 < attributes.size(); i += 2) {
      out.append(' ').append(attributes.get(i)).append("=\"").append(escaped(OneLine.of(attributes.get(i + 1)))).append('"');
    }
  }

  private void indent() {
    out.append("  ".repeat(depth));
  }

  private static String escaped(String text) {
    StringBuilder escaped = new StringBuilder(text.length());
    text.codePoints().forEach(c -> {
      switch (c) {
        case '&' -> escaped.append("&amp;");
        case '<' -> escaped.append("&lt;");
        case '>' -> escaped.append("&gt;");
        case '"' -> escaped.append("&quot;");
        case 0xFFFE, 0xFFFF -> escaped.append(' ');
        default -> escaped.appendCodePoint(c);
      }
    });
    return escaped.toString();
  }

  byte[] bytes() {
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }
}
