package org.seamledger.export.json;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import org.seamledger.geometry.Vec3;
import org.seamledger.measure.MeasureFormat;

/** A JSON document being written, object by object; numbers are rounded to six places. */
public final class JsonOutput implements AutoCloseable {

  /** Writes what is inside an object or list. */
  @FunctionalInterface
  public interface Content {
    void write() throws IOException;
  }

  /** Writes one item of a list. */
  @FunctionalInterface
  public interface Item<T> {
    void write(T item) throws IOException;
  }

  /** Values follow each other with nothing between: what stands between them is ready in {@link JsonLayout}. */
  private static final JsonFactory FACTORY = new JsonFactoryBuilder().rootValueSeparator((String) null).build();

  /** A micrometre, a square millimetre: beyond what any model states. */
  private static final int PLACES = 6;

  /** What rounding may add to a number. */
  static final double HALF_A_STEP = 0.5e-6;

  private final JsonGenerator json;
  private final JsonLayout lines;
  private final Map<String, SerializableString> terms = new HashMap<>();
  private final char[] digits = new char[MeasureFormat.LONGEST];

  /** Leaves {@code out} open when closed. */
  public JsonOutput(OutputStream out) throws IOException {
    json = FACTORY.createGenerator(out, JsonEncoding.UTF8);
    json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    lines = new JsonLayout(json);
  }

  /** The whole document and a line end. */
  public void document(Content content) throws IOException {
    object(content);
    json.writeRaw('\n');
    json.flush();
  }

  public void object(Content content) throws IOException {
    lines.beginObject();
    content.write();
    lines.endObject();
  }

  public void object(String field, Content content) throws IOException {
    lines.field(field);
    object(content);
  }

  /** A list of objects. */
  public <T> void objects(String field, Collection<T> items, Item<T> fields) throws IOException {
    list(field, items, item -> object(() -> fields.write(item)));
  }

  <T> void list(String field, Collection<T> items, Item<T> writer) throws IOException {
    lines.field(field);
    list(items, writer);
  }

  <T> void list(Collection<T> items, Item<T> writer) throws IOException {
    lines.beginList();
    for (T item : items) {
      lines.item();
      writer.write(item);
    }
    lines.endList();
  }

  public void word(String field, String value) throws IOException {
    lines.field(field);
    json.writeString(value);
  }

  /** A word of which there are few, such as a name of the rules: its bytes are kept. */
  public void term(String field, String value) throws IOException {
    lines.field(field);
    json.writeString(terms.computeIfAbsent(value, SerializedString::new));
  }

  /** A word, or null where it is empty. */
  public void wordOrNull(String field, String value) throws IOException {
    lines.field(field);
    if (value.isEmpty()) {
      json.writeNull();
    } else {
      json.writeString(value);
    }
  }

  public void words(String field, Collection<String> values) throws IOException {
    list(field, values, json::writeString);
  }

  public void flag(String field, boolean value) throws IOException {
    lines.field(field);
    json.writeBoolean(value);
  }

  public void count(String field, long value) throws IOException {
    lines.field(field);
    json.writeNumber(value);
  }

  public void number(String field, double value) throws IOException {
    lines.field(field);
    number(value);
  }

  /** A decimal number as it stands. */
  public void decimal(String field, java.math.BigDecimal value) throws IOException {
    lines.field(field);
    json.writeNumber(value.toPlainString());
  }

  private void number(double value) throws IOException {
    int start = MeasureFormat.plain(value, PLACES, digits);
    if (start < 0) {
      json.writeNumber(MeasureFormat.plain(value, PLACES));
    } else {
      json.writeNumber(digits, start, digits.length - start);
    }
  }

  /** Corners that are moved before they are written. */
  void path(String field, Collection<Vec3> corners, Vec3 by) throws IOException {
    list(field, corners, p -> point(p, by));
  }

  void point(String field, Vec3 p) throws IOException {
    lines.field(field);
    point(p);
  }

  void point(Vec3 p) throws IOException {
    point(p, Vec3.ZERO);
  }

  void point(Vec3 p, Vec3 by) throws IOException {
    lines.beginList();
    lines.item();
    number(p.x() + by.x());
    lines.item();
    number(p.y() + by.y());
    lines.item();
    number(p.z() + by.z());
    lines.endList();
  }

  /** Maps, lists, words, flags and numbers, as they come. */
  public void tree(String field, Object value) throws IOException {
    lines.field(field);
    tree(value);
  }

  private void tree(Object value) throws IOException {
    if (value instanceof Map<?, ?> map) {
      lines.beginObject();
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        tree(entry.getKey().toString(), entry.getValue());
      }
      lines.endObject();
    } else if (value instanceof Collection<?> items) {
      list(items, this::tree);
    } else if (value instanceof Double number) {
      number(number);
    } else {
      json.writeObject(value);
    }
  }

  @Override
  public void close() throws IOException {
    json.close();
  }
}
