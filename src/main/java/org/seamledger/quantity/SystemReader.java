package org.seamledger.quantity;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import org.seamledger.finding.EditDistance;
import org.seamledger.measure.Dimension;
import org.seamledger.measure.Measure;
import org.seamledger.measure.MeasureFormatException;
import org.seamledger.quantity.SystemFormatException.Problem;
import org.seamledger.quantity.system.Range;

/**
 * JSON to {@link RoofSystem} and back. The records are the schema: names of components are names of fields, the type says what stands
 * there, {@link Range} what it may be, and the defaults fill what the file leaves out. Every field that is wrong is reported, not only
 * the first. A field named {@code note} is allowed in every object, for remarks.
 */
final class SystemReader {

  static final long LONGEST = 1 << 20;
  static final int MOST_PIECES = 100_000;
  private static final String NOTE = "note";
  private static final ObjectMapper JSON = new ObjectMapper()
      .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
      .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

  private final List<Problem> problems = new ArrayList<>();

  private SystemReader() {
  }

  static RoofSystem parse(String json, String file) {
    if (json.length() > LONGEST) {
      throw tooLong(file, json.length());
    }
    JsonNode tree;
    try {
      tree = JSON.readTree(json);
    } catch (JsonProcessingException e) {
      throw notJson(file, e);
    }
    SystemReader reader = new SystemReader();
    tree = MovedField.inPlace(tree, reader.problems);
    RoofSystem first = new SystemReader().read(tree, RoofSystem.DEFAULT);
    RoofSystem system = reader.read(tree, RoofSystem.DEFAULT.withDerivedDefaults(first));
    reader.checkTogether(system);
    if (!reader.problems.isEmpty()) {
      throw new SystemFormatException(file, reader.problems);
    }
    return system;
  }

  static SystemFormatException tooLong(String file, long bytes) {
    return new SystemFormatException(file, List.of(new Problem("", "at most " + LONGEST + " bytes", bytes + " bytes")));
  }

  static SystemFormatException unreadable(String file, IOException e) {
    String found = e instanceof java.nio.file.NoSuchFileException ? "no such file"
        : e instanceof java.nio.charset.CharacterCodingException ? "bytes that are not UTF-8" : e.getClass().getSimpleName();
    return new SystemFormatException(file, List.of(new Problem("", "a readable JSON file in UTF-8", found)));
  }

  private static SystemFormatException notJson(String file, JsonProcessingException e) {
    String place = e.getLocation() == null ? "" : "line " + e.getLocation().getLineNr() + ", column " + e.getLocation().getColumnNr();
    return new SystemFormatException(file, List.of(new Problem(place, "a JSON object", firstLine(e.getOriginalMessage()))));
  }

  private static String firstLine(String text) {
    // The library's messages go on about its own classes and settings.
    return text == null ? "something else" : text.lines().findFirst().orElse("something else").replaceFirst(" \\(bound as .*", "");
  }

  private RoofSystem read(JsonNode tree, RoofSystem defaults) {
    return (RoofSystem) readRecord(tree, defaults, "");
  }

  private Record readRecord(JsonNode node, Record defaults, String path) {
    if (node == null) {
      return defaults;
    }
    if (!node.isObject()) {
      problems.add(new Problem(path, "an object", describe(node)));
      return defaults;
    }
    RecordComponent[] components = defaults.getClass().getRecordComponents();
    reportUnknown(node, components, path);
    Object[] values = new Object[components.length];
    for (int i = 0; i < components.length; i++) {
      String name = nameIn(node, components[i], path);
      values[i] = readValue(node.get(name), components[i], SystemFields.get(components[i], defaults), inside(path, name));
    }
    return SystemFields.construct(defaults.getClass(), components, values);
  }

  /** The name by which an object has a field. */
  private String nameIn(JsonNode node, RecordComponent component, String path) {
    List<String> used = SystemFields.names(component).stream().filter(node::has).toList();
    if (used.size() > 1) {
      problems.add(new Problem(inside(path, used.get(0)), "one of " + String.join(", ", used), "both"));
    }
    return used.isEmpty() ? component.getName() : used.get(0);
  }

  private static String inside(String path, String name) {
    return path.isEmpty() ? name : path + "." + name;
  }

  private void reportUnknown(JsonNode node, RecordComponent[] components, String path) {
    List<String> known = Arrays.stream(components).flatMap(c -> SystemFields.names(c).stream()).toList();
    for (Iterator<String> names = node.fieldNames(); names.hasNext();) {
      String name = names.next();
      if (!known.contains(name) && !name.equals(NOTE)) {
        problems
            .add(new Problem(inside(path, name), "a known field; the nearest is \"" + nearest(name, known) + "\"",
                "\"" + name + "\""));
      }
    }
  }

  private Object readValue(JsonNode node, RecordComponent component, Object defaults, String path) {
    if (node == null) {
      return defaults;
    }
    Class<?> type = component.getType();
    if (defaults instanceof Record record && !(defaults instanceof Measure)) {
      return readRecord(node, record, path);
    }
    if (defaults instanceof Measure measure) {
      return readMeasure(node, measure, component.getAnnotation(Range.class), path);
    }
    if (type.isEnum()) {
      return readWord(node, (Enum<?>) defaults, path);
    }
    if (type == boolean.class) {
      return expect(node.isBoolean(), "true or false", node, path) ? (Object) node.booleanValue() : defaults;
    }
    if (type == int.class) {
      boolean fits = node.isInt() && node.intValue() >= 1 && node.intValue() <= MOST_PIECES;
      return expect(fits, "a whole number from 1 to " + MOST_PIECES, node, path) ? (Object) node.intValue() : defaults;
    }
    boolean fits = node.isTextual() && node.textValue().length() <= 200;
    return expect(fits, "a text of at most 200 characters", node, path) ? node.textValue() : defaults;
  }

  private boolean expect(boolean fits, String expected, JsonNode node, String path) {
    if (!fits) {
      problems.add(new Problem(path, expected, describe(node)));
    }
    return fits;
  }

  private Measure readMeasure(JsonNode node, Measure defaults, Range range, String path) {
    Dimension dimension = defaults.dimension();
    if (!node.isTextual()) {
      String found = node.isNumber() ? "the number " + node.asText() + " without a unit" : describe(node);
      problems.add(new Problem(path, dimension.noun() + " as text, such as \"" + dimension.example() + "\"", found));
      return defaults;
    }
    try {
      Measure measure = Measure.parse(dimension, node.textValue());
      if (range != null && outside(measure, range)) {
        problems.add(new Problem(path, dimension.noun() + " from " + range.min() + " to " + range.max(), "\"" + measure.text() + "\""));
        return defaults;
      }
      return measure;
    } catch (MeasureFormatException e) {
      String where = e.position() > 1 ? " at position " + e.position() + " of \"" + shortened(node.textValue()) + "\"" : "";
      problems.add(new Problem(path, e.expected(), e.found() + where));
      return defaults;
    }
  }

  private static boolean outside(Measure measure, Range range) {
    return measure.si().compareTo(Measure.parse(measure.dimension(), range.min()).si()) < 0
        || measure.si().compareTo(Measure.parse(measure.dimension(), range.max()).si()) > 0;
  }

  private Object readWord(JsonNode node, Enum<?> defaults, String path) {
    List<String> words = new ArrayList<>();
    for (Enum<?> constant : defaults.getDeclaringClass().getEnumConstants()) {
      words.add(SystemFields.word(constant));
      if (node.isTextual() && SystemFields.word(constant).equals(node.textValue())) {
        return constant;
      }
    }
    String hint = node.isTextual() ? "; the nearest is \"" + nearest(node.textValue(), words) + "\"" : "";
    problems.add(new Problem(path, "one of " + String.join(", ", words) + hint, describe(node)));
    return defaults;
  }

  private void checkTogether(RoofSystem s) {
    if (s.flashing().lap().value() >= s.flashing().length().value()) {
      problems.add(new Problem("flashing.lap", "less than flashing.length, " + s.flashing().length(), "\"" + s.flashing().lap() + "\""));
    }
    if (s.sealant().lowest().value() >= s.sealant().highest().value()) {
      problems
          .add(new Problem("sealant.lowest", "less than sealant.highest, " + s.sealant().highest(), "\"" + s.sealant().lowest() + "\""));
    }
    if (s.inSeam().lowest().value() >= s.inSeam().highest().value()) {
      problems.add(new Problem("inSeam.lowest", "less than inSeam.highest, " + s.inSeam().highest(), "\"" + s.inSeam().lowest() + "\""));
    }
    if (s.site().lowestMetal().value() >= s.site().highestMetal().value()) {
      problems.add(new Problem("site.lowestMetal", "less than site.highestMetal, " + s.site().highestMetal(),
          "\"" + s.site().lowestMetal() + "\""));
    }
    if (s.layout().offset().value() >= s.panel().coverage().value()) {
      problems.add(new Problem("layout.offset", "less than panel.coverage, " + s.panel().coverage(), "\"" + s.layout().offset() + "\""));
    }
  }

  static String describe(JsonNode node) {
    return node.isObject() ? "an object" : node.isArray() ? "a list" : node.isNull() ? "null"
        : node.isTextual() ? "\"" + shortened(node.textValue()) + "\"" : shortened(node.asText());
  }

  private static String shortened(String text) {
    return text.length() <= 40 ? text : text.substring(0, 40) + "…";
  }

  /** The word with the fewest letters to change, the first of several. */
  private static String nearest(String word, List<String> known) {
    String best = known.get(0);
    int fewest = Integer.MAX_VALUE;
    for (String candidate : known) {
      int changes = EditDistance.between(shortened(word), candidate);
      if (changes < fewest) {
        fewest = changes;
        best = candidate;
      }
    }
    return best;
  }
}
