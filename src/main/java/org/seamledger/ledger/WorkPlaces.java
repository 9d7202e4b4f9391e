package org.seamledger.ledger;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.seamledger.journal.WorkItem;
import org.seamledger.journal.WorkPlace;

/** Reads from a stored result the junctions and nodes with what there is to tick at each, in the order of the result. */
final class WorkPlaces implements LedgerReader.Fields {

  private static final int MM = 1000;

  /** Junctions, then nodes, as they stand in the result. */
  private final List<JsonNode> junctions = new ArrayList<>();
  private final List<JsonNode> nodes = new ArrayList<>();
  /** Hold points by detail or kind of node, for results that were stored before each place had its own. */
  private final Map<String, JsonNode> ofDetails = new HashMap<>();
  private final Map<String, JsonNode> ofNodeKinds = new HashMap<>();

  private WorkPlaces() {
  }

  /** @param lines the ids of places that go by another one through the revisions */
  static List<WorkPlace> of(StoredLedger ledger, Map<String, String> lines) {
    WorkPlaces read = new WorkPlaces();
    LedgerReader.read(ledger, read);
    List<WorkPlace> places = new ArrayList<>();
    read.junctions.forEach(j -> places.add(place(j, false, read.ofDetails.get(j.path("detail").asText()), lines)));
    read.nodes.forEach(n -> places.add(place(n, true, read.ofNodeKinds.get(n.path("kind").asText()), lines)));
    return List.copyOf(places);
  }

  @Override
  public void read(String name, JsonParser value) throws IOException {
    switch (name) {
      case "junctions" -> LedgerReader.each(value, item -> junctions.add(item.readValueAsTree()));
      case "nodes" -> LedgerReader.each(value, item -> nodes.add(item.readValueAsTree()));
      case "details" -> holdPoints(value, ofDetails);
      case "nodeKinds" -> holdPoints(value, ofNodeKinds);
      default -> value.skipChildren();
    }
  }

  private static void holdPoints(JsonParser value, Map<String, JsonNode> byId) throws IOException {
    LedgerReader.each(value, item -> {
      JsonNode one = item.readValueAsTree();
      byId.put(one.path("id").asText(), one.path("holdPoints"));
    });
  }

  private static WorkPlace place(JsonNode p, boolean isNode, JsonNode usual, Map<String, String> lines) {
    String id = p.path("id").asText();
    JsonNode own = p.has("holdPoints") ? p.path("holdPoints") : UsualHoldPoints.of(p, usual);
    List<WorkItem> items = items(own);
    return new WorkPlace(id, lines.getOrDefault(id, id), isNode, p.path("kind").asText(), p.path("detail").asText(""),
        p.path("lengthM").asDouble(), items, basis(p, items));
  }

  /** Hold points in their order, each step behind the last of those that it waits for; a step that one locks needs that one. */
  private static List<WorkItem> items(JsonNode holdPoints) {
    Map<String, List<String>> needs = new LinkedHashMap<>();
    Map<String, String> last = new HashMap<>();
    for (JsonNode h : holdPoints) {
      String step = h.path("step").asText("");
      String locks = h.path("locks").asText("");
      Stream.of(step, locks).distinct().filter(s -> !s.isEmpty()).forEach(s -> {
        needs.computeIfAbsent(s, k -> new ArrayList<>());
        last.put(s, h.path("id").asText());
      });
      if (!locks.isEmpty()) {
        needs.get(locks).add(h.path("id").asText());
      }
    }
    List<WorkItem> items = new ArrayList<>();
    for (JsonNode h : holdPoints) {
      String id = h.path("id").asText();
      items.add(new WorkItem(id, false, h.path("before").asText(), h.path("check").asText(), h.path("ifFails").asText(""), List.of()));
      needs.forEach((step, gates) -> {
        if (last.get(step).equals(id)) {
          items.add(new WorkItem(step, true, h.path("before").asText(), "", "", gates));
        }
      });
    }
    return items;
  }

  private static JsonNode basis(JsonNode p, List<WorkItem> items) {
    ObjectNode basis = JsonNodeFactory.instance.objectNode();
    basis.put("kind", p.path("kind").asText()).put("detail", p.path("detail").asText(""))
        .put("lengthMm", millimetres(p.path("lengthM")));
    ArrayNode ends = basis.putArray("ends");
    JsonNode path = p.path("path");
    for (JsonNode point : p.has("at") ? List.of(p.path("at")) : ends(path)) {
      point.forEach(x -> ends.add(millimetres(x)));
    }
    ArrayNode points = basis.putArray("points");
    new LinkedHashSet<>(items.stream().map(WorkItem::id).toList()).forEach(id -> points.add(id.substring(id.indexOf('/') + 1)));
    basis.put("content", Digests.shortId(p.path("seals") + "\n" + p.path("fasteners") + "\n" + p.path("metal")));
    return basis;
  }

  private static List<JsonNode> ends(JsonNode path) {
    return path.isEmpty() ? List.of() : List.of(path.get(0), path.get(path.size() - 1));
  }

  private static long millimetres(JsonNode metres) {
    return Math.round(metres.asDouble() * MM);
  }
}
