package org.seamledger.sequence;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.seamledger.detail.KindedJunction;
import org.seamledger.junction.LineEnd;
import org.seamledger.node.KindedNode;

/** Shows the rules every two steps whose places touch, both ways round, and keeps what they say. */
final class StepPairs {

  private final RoofPlaces places;
  private final StepTable table;
  private final WorkRules rules;
  /** By what the rules see of two places: few, on however many places. */
  private final Map<List<Object>, Pairing> known = new HashMap<>();

  private StepPairs(RoofPlaces places, StepTable table, WorkRules rules) {
    this.places = places;
    this.table = table;
    this.rules = rules;
  }

  static void link(RoofPlaces places, StepTable table, WorkRules rules) {
    StepPairs pairs = new StepPairs(places, table, rules);
    Pairing same = pairs.new Pairing(Map.of("meets", "same"));
    Pairing below = pairs.new Pairing(Map.of("meets", "joint-below"));
    for (String f : places.faces().keySet()) {
      same.pair(f, f);
      List<String> joints = places.joints(f);
      for (int i = 1; i < joints.size(); i++) {
        below.pair(joints.get(i), joints.get(i - 1));
      }
    }
    places.lines().keySet().forEach(pairs::line);
    places.nodes().values().forEach(pairs::node);
    table.settle();
  }

  private void line(String id) {
    PlaceFacts line = places.lineFacts(id);
    line(line, "same").pair(id, id);
    places.sides().get(id).forEach((face, side) -> {
      Pairing pairing = line(line, side.word());
      pairing.both(id, face);
      if (side != RoofPlaces.Side.WITHIN) {
        standIns(face, id, pairing);
      }
    });
  }

  private Pairing line(PlaceFacts line, String meets) {
    return pairing(List.of(line, meets), () -> with(seen(line), meets));
  }

  /** Panels below a joint are panels of the face, laid earlier than the others: they wait for what those wait for. */
  private void standIns(String face, String at, Pairing pairing) {
    places.joints(face).forEach(joint -> pairing.pair(joint, at));
  }

  private void node(KindedNode node) {
    String id = node.id();
    String kind = node.kind().id();
    node(kind, "same").pair(id, id);
    Pairing ofFace = node(kind, "node-face");
    node.node().faces().forEach(f -> {
      ofFace.both(id, f);
      standIns(f, id, ofFace);
    });
    List<LineEnd> ends = node.node().leaving();
    for (LineEnd end : ends) {
      String line = end.junction().id();
      lineEnd(places.lineFacts(line), kind, end.height()).both(id, line);
      for (LineEnd other : ends) {
        if (other != end) {
          lines(line, other.junction().id()).pair(line, other.junction().id());
        }
      }
    }
  }

  private Pairing node(String kind, String meets) {
    return pairing(List.of(kind, meets), () -> with(new TreeMap<>(Map.of("nodeKind", kind)), meets));
  }

  private Pairing lineEnd(PlaceFacts line, String nodeKind, LineEnd.Height height) {
    return pairing(List.of(line, nodeKind, height), () -> {
      Map<String, Object> facts = seen(line);
      facts.put("nodeKind", nodeKind);
      facts.put("end", height.name().toLowerCase(Locale.ROOT));
      return with(facts, "line-end");
    });
  }

  private Pairing lines(String later, String earlier) {
    PlaceFacts line = places.lineFacts(later);
    return pairing(List.of(line, places.lineFacts(earlier)), () -> {
      Map<String, Object> facts = seen(line);
      KindedJunction other = places.lines().get(earlier).junction();
      facts.put("earlierKind", other.kind());
      facts.put("earlierFamily", other.type().family().word());
      facts.put("earlierWater", other.type().water().word());
      return with(facts, "lines");
    });
  }

  /** What pairs see of a line. */
  private static Map<String, Object> seen(PlaceFacts line) {
    Map<String, Object> facts = line.copy();
    facts.remove("place");
    return facts;
  }

  private static Map<String, Object> with(Map<String, Object> facts, String meets) {
    facts.put("meets", meets);
    return facts;
  }

  private Pairing pairing(List<Object> places, Supplier<Map<String, Object>> facts) {
    Pairing pairing = known.get(places);
    if (pairing == null) {
      pairing = new Pairing(facts.get());
      known.put(places, pairing);
    }
    return pairing;
  }

  /** What the rules say of steps at two places, by the later work and the earlier; asked once. */
  private final class Pairing {

    private final Map<String, Object> facts;
    private final int works = table.works();
    private final Boolean[] said = new Boolean[works * works];

    Pairing(Map<String, Object> facts) {
      this.facts = facts;
    }

    void both(String a, String b) {
      pair(a, b);
      pair(b, a);
    }

    void pair(String later, String earlier) {
      for (StepTable.Draft l : table.at(later)) {
        for (StepTable.Draft e : table.at(earlier)) {
          if (l != e && inOrder(l, e)) {
            l.comesAfter(e);
          }
        }
      }
    }

    private boolean inOrder(StepTable.Draft later, StepTable.Draft earlier) {
      int at = later.number * works + earlier.number;
      if (said[at] == null) {
        Map<String, Object> pair = new TreeMap<>(facts);
        pair.put("work", later.work.id());
        pair.put("earlier", earlier.work.id());
        said[at] = rules.inOrder(pair);
      }
      return said[at];
    }
  }
}
