package org.seamledger.export.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;

/**
 * A field a line, two spaces in for each object or list around it, and lists in one line: as the library lays JSON out, but with bytes
 * that are ready where it encodes the same characters at every field.
 */
final class JsonLayout extends DefaultPrettyPrinter {

  private static final long serialVersionUID = 1;
  private static final SerializableString SEPARATOR = new SerializedString(" : ");

  JsonLayout() {
    _objectIndenter = new Lines();
  }

  @Override
  public void writeObjectFieldValueSeparator(JsonGenerator json) throws IOException {
    json.writeRaw(SEPARATOR);
  }

  private static final class Lines implements Indenter {

    private static final int READY = 32;
    private static final SerializableString[] LINES = new SerializableString[READY];

    static {
      for (int level = 0; level < READY; level++) {
        LINES[level] = line(level);
      }
    }

    private static SerializableString line(int level) {
      return new SerializedString("\n" + "  ".repeat(level));
    }

    @Override
    public void writeIndentation(JsonGenerator json, int level) throws IOException {
      json.writeRaw(level < READY ? LINES[level] : line(level));
    }

    @Override
    public boolean isInline() {
      return false;
    }
  }
}
