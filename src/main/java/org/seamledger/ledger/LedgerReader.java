package org.seamledger.ledger;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPInputStream;

/**
 * Reads a stored result in one pass, field by field and junction by junction: a large one (92 MB for 20,000 junctions) never stands in
 * memory as a whole. What is read of its parts has types here; what nobody needs is skipped.
 */
final class LedgerReader {

  /** Reads parts of a document: what follows a part is no fault, nor is a field that a later version added. */
  static final ObjectMapper PLAIN = new ObjectMapper().disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);

  private LedgerReader() {
  }

  /** Takes the fields of a result in their order. */
  @FunctionalInterface
  interface Fields {

    /** @param value stands at the first token of the value, which is read to its end or not at all */
    void read(String name, JsonParser value) throws IOException;
  }

  /** Takes the items of an array. */
  @FunctionalInterface
  interface Items {

    /** @param item stands at the start of an object, which is read to its end */
    void read(JsonParser item) throws IOException;
  }

  /** One junction: identity, place and what it takes to seal. */
  @JsonIgnoreProperties(ignoreUnknown = true)
  record Line(String id, String kind, double lengthM, double[][] path, List<String> faces, List<String> elements,
      String detail, JsonNode facts, JsonNode decided, JsonNode metal, JsonNode seals, JsonNode fasteners, JsonNode closures) {

    boolean isOverridden() {
      return decided != null && decided.isObject();
    }

    /** The detail that the rules alone choose, or the empty string where they choose none. */
    String detailByRules() {
      return isOverridden() ? decided.path("byRules").path("detail").asText("") : detail == null ? "" : detail;
    }

    /** What the model alone makes of it, whatever a person chose. */
    String kindByRules() {
      JsonNode byRules = decided == null ? null : decided.path("byRules").path("kind");
      return byRules == null || !byRules.isTextual() ? kind : byRules.textValue();
    }

    /** What the line runs along, in words that are the same in the next export: an opening, a chimney, a wall of another class. */
    String neighbour() {
      return facts == null ? "" : facts.path("against").asText() + " " + facts.path("neighbourClass").asText();
    }

    double[] start() {
      return path[0];
    }

    double[] end() {
      return path[path.length - 1];
    }
  }

  /** One finding. */
  @JsonIgnoreProperties(ignoreUnknown = true)
  record Found(String code, String severity, String message, String junction, List<String> elements, List<String> junctions,
      JsonNode accepted) {

    /** All junctions concerned; results of earlier versions name one. */
    List<String> places() {
      return junctions != null ? junctions : junction == null ? List.of() : List.of(junction);
    }

    /** What is the same in the next revision although figures in the message differ. */
    String key() {
      return key(junction == null ? "" : junction);
    }

    String key(String junctionBefore) {
      return code + "\n" + junctionBefore + "\n" + elements;
    }
  }

  /** One roof face. */
  @JsonIgnoreProperties(ignoreUnknown = true)
  record Face(String id, double areaM2, List<String> elements) {
  }

  /** One seal of a junction; lengths in metres. */
  @JsonIgnoreProperties(ignoreUnknown = true)
  record Seal(JsonNode form, JsonNode exposure, double lengthM) {
  }

  /** Fasteners, closures or the like of one sort. */
  @JsonIgnoreProperties(ignoreUnknown = true)
  record Counted(long count) {
  }

  /** Panels of one cut; metres and square metres, each. */
  @JsonIgnoreProperties(ignoreUnknown = true)
  record Panels(long count, double lengthM, double areaM2) {
  }

  /** Reads a result that is stored as gzipped JSON. */
  static void unpack(byte[] gzip, Fields fields) throws IOException {
    try (InputStream in = new GZIPInputStream(new ByteArrayInputStream(gzip), 1 << 16)) {
      read(in, fields);
    }
  }

  /** @throws LedgerException where the result can't be read */
  static void read(StoredLedger ledger, Fields fields) {
    try {
      unpack(ledger.gzip(), fields);
    } catch (IOException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE, "A stored result cannot be read: " + e.getMessage(), e);
    }
  }

  /** @throws IOException where it is not one JSON object */
  static void read(InputStream json, Fields fields) throws IOException {
    try (JsonParser in = PLAIN.createParser(json)) {
      if (in.nextToken() != JsonToken.START_OBJECT) {
        throw new IOException("a result is one JSON object, found " + in.currentToken());
      }
      while (in.nextToken() == JsonToken.FIELD_NAME) {
        String name = in.currentName();
        in.nextToken();
        fields.read(name, in);
        in.skipChildren();
      }
    }
  }

  /**
   * The items of the array that the parser stands at; none where it stands at null.
   *
   * @throws IOException where something that is no object is among them
   */
  static void each(JsonParser array, Items items) throws IOException {
    if (!array.isExpectedStartArrayToken()) {
      return;
    }
    while (array.nextToken() == JsonToken.START_OBJECT) {
      items.read(array);
    }
    if (!array.hasToken(JsonToken.END_ARRAY)) {
      throw new IOException("a list of the result holds " + array.currentToken() + " in the place of an object");
    }
  }

  /** All items of the array that the parser stands at. */
  static <T> List<T> all(JsonParser array, Class<T> type) throws IOException {
    List<T> list = new ArrayList<>();
    each(array, item -> list.add(item.readValueAs(type)));
    return list;
  }

  /** All items of an array that was read, none where there is none. */
  static <T> List<T> all(JsonNode array, Class<T> type) throws IOException {
    List<T> list = new ArrayList<>();
    for (JsonNode item : array) {
      list.add(PLAIN.treeToValue(item, type));
    }
    return list;
  }
}
