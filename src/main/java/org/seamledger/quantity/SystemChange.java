package org.seamledger.quantity;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import org.seamledger.quantity.SystemFormatException.Problem;

/** A roof system with some of its values changed in text, such as {@code panel.coverage} to {@code 18 in}. */
public final class SystemChange {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String EXAMPLE = "a field of the system such as panel.coverage";

  private SystemChange() {
  }

  /**
   * The changed system as its file's JSON.
   *
   * @param name of the changed system
   * @param values by the path of their field
   * @param file what messages call it
   * @throws SystemFormatException where there is no such field; whether values are right says who reads the JSON
   */
  public static String apply(RoofSystem base, String name, Map<String, String> values, String file) {
    ObjectNode system = JSON.valueToTree(base.toMap());
    system.put("name", name);
    values.forEach((path, value) -> set(system, MovedField.path(path), value, file));
    try {
      return JSON.writeValueAsString(system);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void set(ObjectNode system, String field, String value, String file) {
    String[] path = field.split("\\.", -1);
    ObjectNode at = system;
    for (int i = 0; i + 1 < path.length && at != null; i++) {
      at = at.get(path[i]) instanceof ObjectNode inner ? inner : null;
    }
    String last = path[path.length - 1];
    if (at == null || !at.has(last) || at.get(last).isObject()) {
      throw new SystemFormatException(file, java.util.List.of(new Problem("", EXAMPLE, "\"" + field + "\"")));
    }
    if (at.get(last).isBoolean() && (value.equals("true") || value.equals("false"))) {
      at.put(last, Boolean.parseBoolean(value));
    } else if (at.get(last).isInt() && value.matches("\\d{1,9}")) {
      at.put(last, Integer.parseInt(value));
    } else {
      at.put(last, value);
    }
  }
}
