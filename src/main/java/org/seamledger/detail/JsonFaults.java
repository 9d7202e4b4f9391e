package org.seamledger.detail;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.DecisionFormatException.Problem;

/** What is wrong in a JSON file that people write: every fault with its line and column, while the reading goes on. */
final class JsonFaults {

  /** Allowed everywhere, for remarks. */
  private static final String NOTE = "note";
  private static final int LONGEST = 40;

  private final JsonParser json;
  private final List<Problem> problems = new ArrayList<>();

  JsonFaults(JsonParser json) {
    this.json = json;
  }

  List<Problem> all() {
    return List.copyOf(problems);
  }

  /** Reports a field that isn't known, unless it is a remark, and goes past its value. */
  void other(String name, JsonLocation at, List<String> known) throws IOException {
    if (!name.equals(NOTE)) {
      problems.add(problem(at, "one of the fields " + String.join(", ", known) + ", " + NOTE, "\"" + shortened(name) + "\""));
    }
    json.skipChildren();
  }

  /** Reports the value at hand and goes past it. */
  void wrong(String expected) throws IOException {
    JsonToken token = json.currentToken();
    String found =
        token == null ? "the end of the file" : token == JsonToken.START_OBJECT ? "an object" : token == JsonToken.START_ARRAY ? "a list"
            : token == JsonToken.VALUE_STRING ? "\"" + shortened(json.getText()) + "\"" : shortened(json.getText());
    problems.add(problem(token == null ? json.currentLocation() : json.currentTokenLocation(), expected, found));
    json.skipChildren();
  }

  /** Reports an object in which something is missing. */
  void missing(JsonLocation begin, String expected, String found) {
    problems.add(problem(begin, expected, found));
  }

  private static Problem problem(JsonLocation at, String expected, String found) {
    return new Problem(at.getLineNr(), at.getColumnNr(), expected, found);
  }

  private static String shortened(String text) {
    return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "…";
  }
}
