package org.seamledger.ledger;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
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
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.ledger.LedgerReader.Face;
import org.seamledger.ledger.LedgerReader.Found;
import org.seamledger.ledger.LedgerReader.Line;

/** The parts of a result that comparing and reviewing need; the rest of the document is skipped while reading. */
record ResultOutline(int contract, JsonNode program, JsonNode system, List<Line> junctions, List<Found> findings, JsonNode quantities,
    JsonNode order, JsonNode joints, JsonNode nodes, JsonNode panels, List<Face> roofFaces) {

  /** In the place of the name of who accepted a finding before names were asked for. */
  private static final String UNNAMED = "name not recorded";

  ResultOutline {
    junctions = List.copyOf(junctions);
    findings = List.copyOf(findings);
    roofFaces = List.copyOf(roofFaces);
  }

  /** What has been read so far. */
  private static final class Draft implements LedgerReader.Fields {
    private int contract;
    private final List<Line> junctions = new ArrayList<>();
    private final List<Found> findings = new ArrayList<>();
    private final List<Face> roofFaces = new ArrayList<>();
    private final Map<String, JsonNode> trees = new HashMap<>();

    private JsonNode tree(String name) {
      return trees.getOrDefault(name, MissingNode.getInstance());
    }

    @Override
    public void read(String name, JsonParser value) throws IOException {
      switch (name) {
        case "contract" -> contract = value.getIntValue();
        case "junctions" -> LedgerReader.each(value, item -> junctions.add(line(item)));
        case "findings" -> findings.addAll(LedgerReader.all(value, Found.class));
        case "roofFaces" -> roofFaces.addAll(LedgerReader.all(value, Face.class));
        case "program", "system", "quantities", "order", "joints", "nodes", "panels" -> trees.put(name, value.readValueAsTree());
        default -> value.skipChildren();
      }
    }

    private static Line line(JsonParser item) throws IOException {
      Line line = item.readValueAs(Line.class);
      if (line.id() == null || line.kind() == null || line.path() == null || line.path().length == 0) {
        throw new IOException("a junction of the result lacks its id, kind or path");
      }
      return line;
    }
  }

  /** Lists of items with ids, beside junctions and findings. */
  Map<String, JsonNode> lists() {
    Map<String, JsonNode> lists = new LinkedHashMap<>();
    lists.put("joints", joints);
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
    Draft d = new Draft();
    LedgerReader.read(json, d);
    return of(d);
  }

  static ResultOutline of(StoredLedger ledger) {
    Draft d = new Draft();
    LedgerReader.read(ledger, d);
    return of(d);
  }

  private static ResultOutline of(Draft d) {
    return new ResultOutline(d.contract, d.tree("program"), d.tree("system"), d.junctions, d.findings, d.tree("quantities"),
        d.tree("order"), d.tree("joints"), d.tree("nodes"), d.tree("panels"), d.roofFaces);
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
      return new AcceptedFinding(f.code(), f.junction() == null ? "" : f.junction(), f.elements() == null ? List.of() : f.elements(),
          occurrences.get(m.place()), new Acceptance(m.acceptedBy().isBlank() ? UNNAMED : m.acceptedBy(), m.acceptedAt(), m.reason()));
    }).toList();
  }
}
