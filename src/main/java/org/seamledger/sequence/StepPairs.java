package org.seamledger.sequence;

import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.junction.LineEnd;
import org.seamledger.node.KindedNode;

/** Shows the rules every two steps whose places touch, both ways round, and keeps what they say. */
final class StepPairs {

  private final RoofPlaces places;
  private final StepTable table;
  private final WorkRules rules;
  /** What the rules said, by the facts of the places, the later work and the earlier: few of each, on however many places. */
  private final Map<Map<String, Object>, Map<String, Map<String, Boolean>>> known = new HashMap<>();
  private final Map<String, Map<String, Object>> ofLines = new HashMap<>();

  private StepPairs(RoofPlaces places, StepTable table, WorkRules rules) {
    this.places = places;
    this.table = table;
    this.rules = rules;
  }

  static void link(RoofPlaces places, StepTable table, WorkRules rules) {
    StepPairs pairs = new StepPairs(places, table, rules);
    places.faces().keySet().forEach(f -> {
      pairs.pair(f, f, Map.of("meets", "same"));
      pairs.joints(f);
    });
    places.lines().keySet().forEach(pairs::line);
    places.nodes().values().forEach(pairs::node);
  }

  private void line(String id) {
    Map<String, Object> line = ofLine(id);
    pair(id, id, with(line, "same"));
    places.sides().get(id).forEach((face, side) -> {
      both(id, face, with(line, side.word()));
      if (side != RoofPlaces.Side.WITHIN) {
        standIns(face, id, with(line, side.word()));
      }
    });
  }

  /** Panels below a joint are panels of the face, laid earlier than the others: they wait for what those wait for. */
  private void standIns(String face, String at, Map<String, Object> facts) {
    places.joints(face).forEach(joint -> pair(joint, at, facts));
  }

  private void joints(String face) {
    List<String> joints = places.joints(face);
    for (int i = 1; i < joints.size(); i++) {
      pair(joints.get(i), joints.get(i - 1), Map.of("meets", "joint-below"));
    }
  }

  private void node(KindedNode node) {
    String id = node.id();
    Map<String, Object> facts = new TreeMap<>(Map.of("nodeKind", node.kind().id()));
    pair(id, id, with(facts, "same"));
    node.node().faces().forEach(f -> {
      both(id, f, with(facts, "node-face"));
      standIns(f, id, with(facts, "node-face"));
    });
    List<LineEnd> ends = node.node().leaving();
    for (LineEnd end : ends) {
      Map<String, Object> there = new TreeMap<>(ofLine(end.junction().id()));
      there.putAll(facts);
      there.put("end", end.height().name().toLowerCase(Locale.ROOT));
      both(id, end.junction().id(), with(there, "line-end"));
      ends.stream().filter(other -> other != end).forEach(other -> lines(end.junction().id(), other.junction().id()));
    }
  }

  private void lines(String later, String earlier) {
    Map<String, Object> facts = new TreeMap<>(ofLine(later));
    DetailedJunction other = places.lines().get(earlier);
    facts.put("earlierKind", other.junction().kind());
    facts.put("earlierFamily", other.junction().type().family().word());
    facts.put("earlierWater", other.junction().type().water().word());
    pair(later, earlier, with(facts, "lines"));
  }

  /** What pairs see of a line. */
  private Map<String, Object> ofLine(String id) {
    return ofLines.computeIfAbsent(id, line -> {
      Map<String, Object> facts = places.lineFacts(line);
      facts.remove("place");
      return Collections.unmodifiableMap(facts);
    });
  }

  private static Map<String, Object> with(Map<String, Object> facts, String meets) {
    Map<String, Object> all = new TreeMap<>(facts);
    all.put("meets", meets);
    return all;
  }

  private void both(String a, String b, Map<String, Object> facts) {
    pair(a, b, facts);
    pair(b, a, facts);
  }

  private void pair(String later, String earlier, Map<String, Object> facts) {
    Map<String, Map<String, Boolean>> ofPlaces = known.computeIfAbsent(facts, f -> new HashMap<>());
    for (StepTable.Draft l : table.at(later)) {
      Map<String, Boolean> ofLater = ofPlaces.computeIfAbsent(l.work.id(), w -> new HashMap<>());
      for (StepTable.Draft e : table.at(earlier)) {
        if (l != e && ofLater.computeIfAbsent(e.work.id(), w -> inOrder(facts, l.work.id(), w))) {
          l.after.add(e.id());
        }
      }
    }
  }

  private boolean inOrder(Map<String, Object> facts, String work, String earlier) {
    Map<String, Object> pair = new TreeMap<>(facts);
    pair.put("work", work);
    pair.put("earlier", earlier);
    return rules.inOrder(pair);
  }
}
