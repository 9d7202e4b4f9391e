package org.seamledger.export.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;

/**
 * What stands between the values of a JSON document: a field a line, two spaces in for each object around it, and lists in one line, as
 * the library lays JSON out. Everything from one value to the next is a run of bytes that is encoded once and kept: in a long document
 * the same few fields come again a million times.
 */
final class JsonLayout {

  private static final SerializableString OBJECT = new SerializedString("{");
  private static final SerializableString EMPTY_OBJECT = new SerializedString(" }");
  private static final SerializableString LIST = new SerializedString("[");
  private static final SerializableString FIRST_ITEM = new SerializedString(" ");
  private static final SerializableString ITEM = new SerializedString(", ");
  private static final SerializableString END_OF_LIST = new SerializedString(" ]");

  private final JsonGenerator json;
  private final Map<String, Field> fields = new HashMap<>();
  private final Field ends = new Field("");
  private int depth;
  /** Whether nothing stands yet in the object or list that was begun last. */
  private boolean empty = true;

  /** A field's name with all that stands before it, by depth: where it is the first of its object, and where it isn't. */
  private static final class Field {
    private static final int READY = 16;
    private final String name;
    private final SerializableString[] first = new SerializableString[READY];
    private final SerializableString[] next = new SerializableString[READY];

    Field(String name) {
      this.name = name;
    }
  }

  JsonLayout(JsonGenerator json) {
    this.json = json;
  }

  void beginObject() throws IOException {
    json.writeRaw(OBJECT);
    depth++;
    empty = true;
  }

  void field(String name) throws IOException {
    Field field = fields.get(name);
    if (field == null) {
      field = new Field(name);
      fields.put(name, field);
    }
    SerializableString[] ready = empty ? field.first : field.next;
    String before = empty ? "\n" : ",\n";
    if (depth >= Field.READY) {
      json.writeRaw(named(before, name));
    } else {
      if (ready[depth] == null) {
        ready[depth] = named(before, name);
      }
      json.writeRaw(ready[depth]);
    }
    empty = false;
  }

  private SerializableString named(String before, String name) {
    return new SerializedString(before + "  ".repeat(depth) + '"' + new String(new SerializedString(name).asQuotedChars()) + "\" : ");
  }

  void endObject() throws IOException {
    depth--;
    if (empty) {
      json.writeRaw(EMPTY_OBJECT);
    } else if (depth >= Field.READY) {
      json.writeRaw(end());
    } else {
      if (ends.next[depth] == null) {
        ends.next[depth] = end();
      }
      json.writeRaw(ends.next[depth]);
    }
    empty = false;
  }

  private SerializableString end() {
    return new SerializedString("\n" + "  ".repeat(depth) + "}");
  }

  void beginList() throws IOException {
    json.writeRaw(LIST);
    empty = true;
  }

  void item() throws IOException {
    json.writeRaw(empty ? FIRST_ITEM : ITEM);
    empty = false;
  }

  void endList() throws IOException {
    json.writeRaw(END_OF_LIST);
    empty = false;
  }
}
