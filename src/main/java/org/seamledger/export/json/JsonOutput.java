package org.seamledger.export.json;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Collection;
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

  private static final JsonFactory FACTORY = new JsonFactory();

  /** A micrometre, a square millimetre: beyond what any model states. */
  private static final int PLACES = 6;

  /** What rounding may add to a number. */
  static final double HALF_A_STEP = 0.5e-6;

  private final JsonGenerator json;

  /** Leaves {@code out} open when closed. */
  public JsonOutput(OutputStream out) throws IOException {
    json = FACTORY.createGenerator(out, JsonEncoding.UTF8);
    json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    json.setPrettyPrinter(new JsonLayout());
  }

  /** The whole document and a line end. */
  public void document(Content content) throws IOException {
    object(content);
    json.writeRaw('\n');
    json.flush();
  }

  public void object(Content content) throws IOException {
    json.writeStartObject();
    content.write();
    json.writeEndObject();
  }

  public void object(String field, Content content) throws IOException {
    json.writeFieldName(field);
    object(content);
  }

  /** A list of objects. */
  public <T> void objects(String field, Collection<T> items, Item<T> fields) throws IOException {
    list(field, items, item -> object(() -> fields.write(item)));
  }

  <T> void list(String field, Collection<T> items, Item<T> writer) throws IOException {
    json.writeFieldName(field);
    list(items, writer);
  }

  <T> void list(Collection<T> items, Item<T> writer) throws IOException {
    json.writeStartArray();
    for (T item : items) {
      writer.write(item);
    }
    json.writeEndArray();
  }

  public void word(String field, String value) throws IOException {
    json.writeStringField(field, value);
  }

  /** A word, or null where it is empty. */
  public void wordOrNull(String field, String value) throws IOException {
    if (value.isEmpty()) {
      json.writeNullField(field);
    } else {
      word(field, value);
    }
  }

  public void words(String field, Collection<String> values) throws IOException {
    list(field, values, json::writeString);
  }

  public void flag(String field, boolean value) throws IOException {
    json.writeBooleanField(field, value);
  }

  public void count(String field, long value) throws IOException {
    json.writeNumberField(field, value);
  }

  public void number(String field, double value) throws IOException {
    json.writeFieldName(field);
    number(value);
  }

  /** A decimal number as it stands. */
  public void decimal(String field, java.math.BigDecimal value) throws IOException {
    json.writeFieldName(field);
    json.writeNumber(value.toPlainString());
  }

  private void number(double value) throws IOException {
    json.writeNumber(MeasureFormat.plain(value, PLACES));
  }

  void path(String field, Collection<Vec3> corners) throws IOException {
    list(field, corners, this::point);
  }

  void point(String field, Vec3 p) throws IOException {
    json.writeFieldName(field);
    point(p);
  }

  void point(Vec3 p) throws IOException {
    json.writeStartArray();
    number(p.x());
    number(p.y());
    number(p.z());
    json.writeEndArray();
  }

  /** Maps, lists, words, flags and numbers, as they come. */
  public void tree(String field, Object value) throws IOException {
    json.writeFieldName(field);
    tree(value);
  }

  private void tree(Object value) throws IOException {
    if (value instanceof Map<?, ?> map) {
      json.writeStartObject();
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        json.writeFieldName(entry.getKey().toString());
        tree(entry.getValue());
      }
      json.writeEndObject();
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
