package org.seamledger.detail;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.seamledger.detail.DecisionFormatException.Problem;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.finding.SettingsFile;

/**
 * Reads a file of decisions:
 *
 * <pre>{"decisions": [{"junction": "Jexw…", "kind": "valley", "detail": "valley-low-slope", "reason": "measured on site"}],
 * "accepted": [{"finding": {"code": "kind/flat-edge", "junction": "Jexw…", "elements": ["0b…"]}, "by": "A. Roofer",
 * "when": "2024-05-31", "reason": "a membrane is ordered"}]}</pre>
 *
 * {@code kind} or {@code detail} may be left out, and either list; {@code note} is allowed in every object, for remarks. Every fault is
 * reported, with its line and column, not only the first.
 */
public final class DecisionReader {

  private static final long LONGEST = 16 << 20;
  private static final List<String> FIELDS = List.of("junction", "kind", "detail", "reason");
  private static final JsonFactory JSON = new JsonFactory().enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION);

  private final JsonParser json;
  private final JsonFaults faults;
  private final Set<String> kinds;
  private final List<Decision> decisions = new ArrayList<>();
  private final List<AcceptedFinding> accepted = new ArrayList<>();
  private final Set<String> junctions = new TreeSet<>();

  /** What such a file holds, each list in the file's order. */
  public record Content(List<Decision> decisions, List<AcceptedFinding> accepted) {
    public Content {
      decisions = List.copyOf(decisions);
      accepted = List.copyOf(accepted);
    }
  }

  private DecisionReader(JsonParser json, Set<String> kinds) {
    this.json = json;
    this.faults = new JsonFaults(json);
    this.kinds = kinds;
  }

  /**
   * What stands in a file.
   *
   * @param kinds ids that a kind can have
   * @throws DecisionFormatException where it can't be read or something in it is wrong
   */
  public static Content read(Path file, Set<String> kinds) {
    try {
      if (Files.size(file) > LONGEST) {
        throw whole(file.toString(), "at most " + LONGEST + " bytes", Files.size(file) + " bytes");
      }
      return parse(SettingsFile.text(file), file.toString(), kinds);
    } catch (NoSuchFileException e) {
      throw whole(file.toString(), "a readable JSON file in UTF-8", "no such file");
    } catch (CharacterCodingException e) {
      throw whole(file.toString(), "a readable JSON file in UTF-8", "bytes that are not UTF-8");
    } catch (IOException e) {
      throw whole(file.toString(), "a readable JSON file in UTF-8", e.getClass().getSimpleName());
    }
  }

  /**
   * What stands in a text.
   *
   * @param file what to call it in messages
   * @param kinds ids that a kind can have
   */
  public static Content parse(String text, String file, Set<String> kinds) {
    try (JsonParser parser = JSON.createParser(text)) {
      DecisionReader reader = new DecisionReader(parser, kinds);
      reader.document();
      if (!reader.faults.all().isEmpty()) {
        throw new DecisionFormatException(file, reader.faults.all());
      }
      return new Content(reader.decisions, reader.accepted);
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      // The library adds where it thinks that things began, in words of its own.
      String found = e.getOriginalMessage().lines().findFirst().orElse("something else").replaceFirst(" \\(start marker at .*", "");
      throw new DecisionFormatException(file,
          List.of(new Problem(at == null ? 0 : at.getLineNr(), at == null ? 0 : at.getColumnNr(), "JSON", found)));
    } catch (IOException e) {
      throw new IllegalStateException("a text that can't be read", e);
    }
  }

  private static DecisionFormatException whole(String file, String expected, String found) {
    return new DecisionFormatException(file, List.of(new Problem(0, 0, expected, found)));
  }

  private void document() throws IOException {
    boolean has = false;
    if (json.nextToken() != JsonToken.START_OBJECT) {
      faults.wrong("an object with the field \"decisions\"");
      return;
    }
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      String name = json.currentName();
      JsonLocation at = json.currentTokenLocation();
      json.nextToken();
      if (name.equals("decisions")) {
        has = true;
        list();
      } else if (name.equals("accepted")) {
        has = true;
        accepted.addAll(new AcceptanceReader(json, faults).list());
      } else {
        faults.other(name, at, List.of("decisions", "accepted"));
      }
    }
    if (!has) {
      faults.wrong("the field \"decisions\" before this");
    }
    if (json.nextToken() != null) {
      faults.wrong("the end of the file");
    }
  }

  private void list() throws IOException {
    if (json.currentToken() != JsonToken.START_ARRAY) {
      faults.wrong("a list of decisions");
      return;
    }
    while (json.nextToken() != JsonToken.END_ARRAY) {
      if (json.currentToken() == JsonToken.START_OBJECT) {
        decision();
      } else {
        faults.wrong("an object with junction, kind or detail, and reason");
      }
    }
  }

  private void decision() throws IOException {
    JsonLocation begin = json.currentTokenLocation();
    int before = faults.all().size();
    Map<String, String> values = new LinkedHashMap<>();
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      String name = json.currentName();
      JsonLocation at = json.currentTokenLocation();
      json.nextToken();
      if (FIELDS.contains(name)) {
        value(name, values);
      } else {
        faults.other(name, at, FIELDS);
      }
    }
    if (faults.all().size() == before) {
      check(begin, values);
    }
  }

  private void value(String name, Map<String, String> values) throws IOException {
    if (json.currentToken() == JsonToken.VALUE_NULL && !name.equals("junction") && !name.equals("reason")) {
      return;
    }
    if (json.currentToken() != JsonToken.VALUE_STRING) {
      faults.wrong("a text for " + name);
    } else if (name.equals("kind") && !json.getText().isEmpty() && !kinds.contains(json.getText())) {
      faults.wrong("one of the kinds " + String.join(", ", listed()));
    } else if (name.equals("junction") && !junctions.add(json.getText())) {
      faults.wrong("one decision for each junction");
    } else {
      values.put(name, json.getText());
    }
  }

  /** Kinds of the contract first, in their order. */
  private List<String> listed() {
    List<String> all = new ArrayList<>(Kinds.ALL);
    kinds.stream().filter(k -> !Kinds.ALL.contains(k) && !k.equals(Kinds.UNCLASSIFIED)).sorted().forEach(all::add);
    return all;
  }

  private void check(JsonLocation begin, Map<String, String> values) {
    String kind = values.getOrDefault("kind", "");
    String detail = values.getOrDefault("detail", "");
    boolean complete = true;
    for (String name : List.of("junction", "reason")) {
      if (values.getOrDefault(name, "").isBlank()) {
        faults.missing(begin, "a decision with its " + name, values.containsKey(name) ? "an empty one" : "none");
        complete = false;
      }
    }
    if (kind.isEmpty() && detail.isEmpty()) {
      faults.missing(begin, "a decision with kind or detail", "neither");
      complete = false;
    }
    if (complete) {
      decisions.add(new Decision(values.get("junction"), kind, detail, values.get("reason")));
    }
  }
}
