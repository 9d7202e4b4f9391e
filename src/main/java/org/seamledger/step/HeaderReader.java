package org.seamledger.step;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The header section's entities, clause 8.2 of ISO 10303-21. */
final class HeaderReader {

  /** What the program reads of the header. */
  static final Set<String> ENTITIES = Set.of("FILE_SCHEMA", "FILE_NAME");
  private static final int LONGEST = 1 << 22;
  private static final int TIME_STAMP = 1;
  private static final int PREPROCESSOR = 4;
  private static final int ORIGINATING_SYSTEM = 5;

  private HeaderReader() {
  }

  static Header read(FileBytes bytes, Map<String, long[]> spans) throws IOException {
    List<String> schemas = new ArrayList<>();
    texts(parameters(bytes, spans.get("FILE_SCHEMA")), schemas);
    List<Value> name = parameters(bytes, spans.get("FILE_NAME"));
    return new Header(schemas, text(name, PREPROCESSOR), text(name, ORIGINATING_SYSTEM), text(name, TIME_STAMP));
  }

  private static List<Value> parameters(FileBytes bytes, long[] span) throws IOException {
    if (span == null) {
      return List.of();
    }
    byte[] text = new byte[(int) Math.min(span[1] - span[0], LONGEST)];
    int n = bytes.read(span[0], text, 0, text.length);
    return new ParameterReader(text, 0, n, span[0]).headerEntity();
  }

  private static void texts(List<Value> values, List<String> into) {
    for (Value value : values) {
      if (value instanceof Value.Text text) {
        into.add(text.value());
      } else if (value instanceof Value.Aggregate aggregate) {
        texts(aggregate.items(), into);
      }
    }
  }

  private static String text(List<Value> values, int i) {
    return i < values.size() && values.get(i) instanceof Value.Text text ? text.value() : "";
  }
}
