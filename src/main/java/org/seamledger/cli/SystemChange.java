package org.seamledger.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.seamledger.quantity.RoofSystem;

/** A roof system with some of its values changed in text: {@code panel.coverage = 18 in; ridge.vented = true}. */
final class SystemChange {

  private static final ObjectMapper JSON = new ObjectMapper();

  private SystemChange() {
  }

  /**
   * The changed system as its file's JSON.
   *
   * @throws UsageException where a field is named that a system has not; whether values are right says who reads the JSON
   */
  static String apply(RoofSystem base, String name, String changes) {
    ObjectNode system = JSON.valueToTree(base.toMap());
    system.put("name", name);
    for (String change : changes.split(";")) {
      if (!change.isBlank()) {
        set(system, change.strip());
      }
    }
    try {
      return JSON.writeValueAsString(system);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void set(ObjectNode system, String change) {
    int equals = change.indexOf('=');
    String[] path = (equals < 0 ? change : change.substring(0, equals)).strip().split("\\.");
    ObjectNode at = system;
    for (int i = 0; i + 1 < path.length && at != null; i++) {
      at = at.get(path[i]) instanceof ObjectNode inner ? inner : null;
    }
    String field = path[path.length - 1];
    if (equals < 0 || at == null || !at.has(field) || at.get(field).isObject()) {
      throw new UsageException(
          "--alternate: expected FIELD = VALUE with a field of the system such as panel.coverage, found \"" + change + "\"");
    }
    String value = change.substring(equals + 1).strip();
    if (at.get(field).isBoolean() && (value.equals("true") || value.equals("false"))) {
      at.put(field, Boolean.parseBoolean(value));
    } else if (at.get(field).isInt() && value.matches("\\d{1,9}")) {
      at.put(field, Integer.parseInt(value));
    } else {
      at.put(field, value);
    }
  }
}
