package org.seamledger.detail;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.AcceptedFinding;

/** Reads the list of accepted findings in a file of decisions. */
final class AcceptanceReader {

  private static final List<String> FIELDS = List.of("finding", "by", "when", "reason");
  private static final List<String> OF_FINDING = List.of("code", "junction", "elements", "occurrence");

  private final JsonParser json;
  private final JsonFaults faults;

  AcceptanceReader(JsonParser json, JsonFaults faults) {
    this.json = json;
    this.faults = faults;
  }

  /** One object being read: its texts, the elements and the occurrence of the finding. */
  private static final class Draft {
    final Map<String, String> texts = new HashMap<>();
    final List<String> elements = new ArrayList<>();
    int occurrence = 1;

    AcceptedFinding finished() {
      return new AcceptedFinding(text("code"), text("junction"), elements, occurrence,
          new Acceptance(text("by"), text("when"), text("reason")));
    }

    String text(String name) {
      return texts.getOrDefault(name, "");
    }
  }

  /** Stands on the list; leaves the parser on its end. */
  List<AcceptedFinding> list() throws IOException {
    List<AcceptedFinding> all = new ArrayList<>();
    if (json.currentToken() != JsonToken.START_ARRAY) {
      faults.wrong("a list of accepted findings");
      return all;
    }
    Set<List<Object>> seen = new HashSet<>();
    while (json.nextToken() != JsonToken.END_ARRAY) {
      if (json.currentToken() != JsonToken.START_OBJECT) {
        faults.wrong("an object with finding, by, when and reason");
        continue;
      }
      JsonLocation begin = json.currentTokenLocation();
      int before = faults.all().size();
      Draft draft = acceptance();
      requireTexts(begin, draft, before);
      if (faults.all().size() == before) {
        if (!seen.add(List.of(draft.text("code"), draft.text("junction"), draft.elements, draft.occurrence))) {
          faults.missing(begin, "one acceptance for each finding", "a second one");
        }
        all.add(draft.finished());
      }
    }
    return all;
  }

  private Draft acceptance() throws IOException {
    Draft draft = new Draft();
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      String name = json.currentName();
      JsonLocation at = json.currentTokenLocation();
      json.nextToken();
      if (name.equals("finding")) {
        finding(draft);
      } else if (FIELDS.contains(name)) {
        text(name, draft);
      } else {
        faults.other(name, at, FIELDS);
      }
    }
    return draft;
  }

  private void finding(Draft draft) throws IOException {
    if (json.currentToken() != JsonToken.START_OBJECT) {
      faults.wrong("an object with the finding's code, junction and elements");
      return;
    }
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      String name = json.currentName();
      JsonLocation at = json.currentTokenLocation();
      json.nextToken();
      switch (name) {
        case "code", "junction" -> text(name, draft);
        case "elements" -> elements(draft);
        case "occurrence" -> occurrence(draft);
        default -> faults.other(name, at, OF_FINDING);
      }
    }
  }

  private void text(String name, Draft draft) throws IOException {
    if (json.currentToken() == JsonToken.VALUE_NULL && (name.equals("junction") || name.equals("when"))) {
      return;
    }
    if (json.currentToken() != JsonToken.VALUE_STRING) {
      faults.wrong("a text for " + name);
    } else if (name.equals("when") && !json.getText().isEmpty() && !Acceptance.isTime(json.getText())) {
      faults.wrong("a day such as 2024-05-31, or a time such as 2024-05-31T14:00:00Z");
    } else {
      draft.texts.put(name, json.getText());
    }
  }

  private void elements(Draft draft) throws IOException {
    if (json.currentToken() != JsonToken.START_ARRAY) {
      faults.wrong("a list of GlobalIds");
      return;
    }
    while (json.nextToken() != JsonToken.END_ARRAY) {
      if (json.currentToken() == JsonToken.VALUE_STRING) {
        draft.elements.add(json.getText());
      } else {
        faults.wrong("a GlobalId");
      }
    }
  }

  private void occurrence(Draft draft) throws IOException {
    if (json.currentToken() != JsonToken.VALUE_NUMBER_INT || json.getLongValue() < 1 || json.getLongValue() > Integer.MAX_VALUE) {
      faults.wrong("a whole number from 1 on");
    } else {
      draft.occurrence = json.getIntValue();
    }
  }

  private void requireTexts(JsonLocation begin, Draft draft, int before) {
    if (faults.all().size() > before) {
      return;
    }
    for (String name : List.of("code", "by", "reason")) {
      if (draft.text(name).isBlank()) {
        faults.missing(begin, "an accepted finding with its " + name, draft.texts.containsKey(name) ? "an empty one" : "none");
      }
    }
  }
}
