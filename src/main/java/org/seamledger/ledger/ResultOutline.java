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
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.zip.GZIPInputStream;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.AcceptedFinding;

/** The parts of a result that comparing and reviewing need; the rest of the document is skipped while reading. */
@JsonIgnoreProperties(ignoreUnknown = true)
record ResultOutline(int contract, JsonNode program, JsonNode system, List<Line> junctions, List<Found> findings, JsonNode quantities,
    JsonNode order, JsonNode nodes, JsonNode panels, List<Face> roofFaces) {

  /** In the place of the name of who accepted a finding before names were asked for. */
  private static final String UNNAMED = "name not recorded";

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
  record Found(String code, String severity, String message, String junction, List<String> elements, JsonNode accepted) {

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

  /** Lists of items with ids, beside junctions and findings. */
  Map<String, JsonNode> lists() {
    Map<String, JsonNode> lists = new LinkedHashMap<>();
    lists.put("nodes", nodes);
    lists.put("panels", panels);
    return lists;
  }

  List<String> settingsThatDiffer(ResultOutline other) {
    List<String> words = new ArrayList<>();
    if (!text(program, "version").equals(text(other.program, "version"))) {
      words.add("version of the program");
    }
    if (!text(program, "shapes").equals(text(other.program, "shapes"))) {
      words.add("rules");
    }
    if (system != null && other.system != null && !system.equals(other.system)) {
      words.add("roof system");
    }
    return words;
  }

  /** GlobalIds of what the faces lie on. */
  Set<String> roofElements() {
    Set<String> all = new HashSet<>();
    roofFaces.stream().filter(f -> f.elements() != null).forEach(f -> all.addAll(f.elements()));
    return all;
  }

  private static String text(JsonNode node, String field) {
    return node == null ? "" : node.path(field).asText("");
  }

  static ResultOutline read(InputStream json) throws IOException {
    ResultOutline outline = READER.readValue(json);
    if (outline == null) {
      throw new IOException("nothing is in it");
    }
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
    List<Integer> occurrences = occurrences();
    return IntStream.range(0, findings.size())
        .mapToObj(i -> Digests.shortId(findings.get(i).key() + "\n" + occurrences.get(i))).toList();
  }

  /** Of each finding which it is among those that agree in code, junction and elements, from 1. */
  private List<Integer> occurrences() {
    Map<String, Integer> seen = new HashMap<>();
    return findings.stream().map(f -> seen.merge(f.key(), 1, Integer::sum)).toList();
  }

  /** Marks of findings that are accepted, as what says so in every export. */
  List<AcceptedFinding> accepted(List<FindingMark> marks) {
    List<Integer> occurrences = occurrences();
    return marks.stream().filter(m -> m.place() < findings.size()).map(m -> {
      Found f = findings.get(m.place());
      return new AcceptedFinding(f.code, f.junction == null ? "" : f.junction, f.elements == null ? List.of() : f.elements,
          occurrences.get(m.place()), new Acceptance(m.acceptedBy().isBlank() ? UNNAMED : m.acceptedBy(), m.acceptedAt(), m.reason()));
    }).toList();
  }
}
