package org.seamledger.ledger;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPInputStream;

/** The parts of a result that comparing and reviewing need; the rest of the document is skipped while reading. */
@JsonIgnoreProperties(ignoreUnknown = true)
record ResultOutline(int contract, List<Line> junctions, List<Found> findings, JsonNode quantities, List<Face> roofFaces) {

  private static final ObjectReader READER =
      new ObjectMapper().readerFor(ResultOutline.class).without(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);

  ResultOutline {
    junctions = junctions == null ? List.of() : List.copyOf(junctions);
    findings = findings == null ? List.of() : List.copyOf(findings);
    roofFaces = roofFaces == null ? List.of() : List.copyOf(roofFaces);
    quantities = quantities == null ? MissingNode.getInstance() : quantities;
  }

  /** One junction: identity, place and what it takes to seal. */
  @JsonIgnoreProperties(ignoreUnknown = true)
  record Line(String id, String kind, double lengthM, double[][] path, List<String> faces, List<String> elements,
      String detail, JsonNode facts, JsonNode decided, JsonNode seals, JsonNode fasteners) {

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
  record Found(String code, String severity, String message, String junction, List<String> elements) {
  }

  /** One roof face. */
  @JsonIgnoreProperties(ignoreUnknown = true)
  record Face(String id, double areaM2) {
  }

  static ResultOutline read(InputStream json) throws IOException {
    ResultOutline outline = READER.readValue(json);
    for (Line line : outline.junctions) {
      if (line.id == null || line.kind == null || line.path == null || line.path.length == 0) {
        throw new IOException("a junction of the result lacks its id, kind or path");
      }
    }
    return outline;
  }

  static ResultOutline of(StoredLedger ledger) {
    try (InputStream in = new GZIPInputStream(new ByteArrayInputStream(ledger.gzip()), 1 << 16)) {
      return read(in);
    } catch (IOException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE, "A stored result cannot be read: " + e.getMessage(), e);
    }
  }

  /**
   * Ids of the findings, in their order. A finding has no id of its own in a result; its code, junction and elements make one that is the
   * same in the next revision although the figures in its message differ. The ordinal tells findings apart that agree in all of these.
   */
  List<String> findingIds() {
    Map<String, Integer> seen = new HashMap<>();
    return findings.stream().map(f -> {
      String key = f.code + "\n" + (f.junction == null ? "" : f.junction) + "\n" + f.elements;
      int ordinal = seen.merge(key, 1, Integer::sum);
      return Digests.shortId(key + "\n" + ordinal);
    }).toList();
  }
}
