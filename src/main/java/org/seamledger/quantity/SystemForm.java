package org.seamledger.quantity;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import org.seamledger.measure.Measure;
import org.seamledger.quantity.SystemField.Type;
import org.seamledger.quantity.system.Range;

/** Every value of a roof system with its range, choices and meaning, in the order of the file: the one place that explains them. */
public final class SystemForm {

  private static final String TEXTS = "system-fields.properties";
  private static final List<SystemField> FIELDS = read();

  private SystemForm() {
  }

  /** All fields. */
  public static List<SystemField> fields() {
    return FIELDS;
  }

  private static List<SystemField> read() {
    Properties texts = new Properties();
    try (Reader in = new InputStreamReader(SystemForm.class.getResourceAsStream(TEXTS), StandardCharsets.UTF_8)) {
      texts.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    List<SystemField> fields = new ArrayList<>();
    add(RoofSystem.DEFAULT, "", texts, fields);
    return List.copyOf(fields);
  }

  private static void add(Record record, String inside, Properties texts, List<SystemField> fields) {
    for (RecordComponent component : record.getClass().getRecordComponents()) {
      String path = inside + SystemFields.names(component).get(0);
      Object value = SystemFields.get(component, record);
      if (value instanceof Record inner && !(value instanceof Measure)) {
        add(inner, path + ".", texts, fields);
      } else {
        fields.add(field(path, component, value, texts.getProperty(path, "").split("\\s*\\|\\s*", 2)));
      }
    }
  }

  private static SystemField field(String path, RecordComponent component, Object value, String[] text) {
    String source = text.length > 1 ? text[1] : "";
    Range range = component.getAnnotation(Range.class);
    if (value instanceof Measure measure) {
      return new SystemField(path, Type.MEASURE, measure.text(), measure.dimension().noun(), range == null ? "" : range.min(),
          range == null ? "" : range.max(), List.of(), text[0], source);
    }
    if (value instanceof Enum<?> constant) {
      List<String> words = Arrays.stream(constant.getDeclaringClass().getEnumConstants()).map(SystemFields::word).toList();
      return new SystemField(path, Type.CHOICE, SystemFields.word(constant), "", "", "", words, text[0], source);
    }
    boolean isCount = value instanceof Integer;
    Type type = isCount ? Type.COUNT : value instanceof Boolean ? Type.SWITCH : Type.TEXT;
    return new SystemField(path, type, value.toString(), "", isCount ? "1" : "", isCount ? Integer.toString(SystemReader.MOST_PIECES) : "",
        type == Type.SWITCH ? List.of("true", "false") : List.of(), text[0], source);
  }
}
