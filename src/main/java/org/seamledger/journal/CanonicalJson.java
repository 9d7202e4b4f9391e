package org.seamledger.journal;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Iterator;
import java.util.TreeMap;

/**
 * JSON in its canonical form, RFC 8785: no blanks, fields in the order of their names' UTF-16 units, the shortest escapes. Numbers are
 * whole and below 2^53; the record has no others.
 */
final class CanonicalJson {

  private static final long LARGEST = 1L << 53;
  private static final int FIRST_PRINTABLE = 0x20;

  private CanonicalJson() {
  }

  /** @throws IllegalArgumentException where a number is not whole */
  static String of(JsonNode value) {
    StringBuilder out = new StringBuilder();
    write(value, out);
    return out.toString();
  }

  private static void write(JsonNode value, StringBuilder out) {
    if (value.isObject()) {
      object(value, out);
    } else if (value.isArray()) {
      out.append('[');
      for (Iterator<JsonNode> items = value.elements(); items.hasNext();) {
        write(items.next(), out);
        out.append(items.hasNext() ? "," : "");
      }
      out.append(']');
    } else if (value.isTextual()) {
      text(value.textValue(), out);
    } else if (value.isNumber()) {
      if (!value.isIntegralNumber() || !value.canConvertToLong() || Math.abs(value.longValue()) >= LARGEST) {
        throw new IllegalArgumentException("a number of the record is not whole: " + value);
      }
      out.append(value.longValue());
    } else {
      out.append(value.asText());
    }
  }

  private static void object(JsonNode value, StringBuilder out) {
    TreeMap<String, JsonNode> fields = new TreeMap<>();
    value.properties().forEach(f -> fields.put(f.getKey(), f.getValue()));
    out.append('{');
    fields.forEach((name, field) -> {
      if (out.charAt(out.length() - 1) != '{') {
        out.append(',');
      }
      text(name, out);
      out.append(':');
      write(field, out);
    });
    out.append('}');
  }

  private static void text(String text, StringBuilder out) {
    out.append('"');
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '"' -> out.append("\\\"");
        case '\\' -> out.append("\\\\");
        case '\b' -> out.append("\\b");
        case '\f' -> out.append("\\f");
        case '\n' -> out.append("\\n");
        case '\r' -> out.append("\\r");
        case '\t' -> out.append("\\t");
        default -> out.append(c < FIRST_PRINTABLE ? String.format("\\u%04x", (int) c) : String.valueOf(c));
      }
    }
    out.append('"');
  }
}
