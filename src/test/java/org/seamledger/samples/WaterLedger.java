package org.seamledger.samples;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamledger.export.JsonLedger;
import org.seamledger.takeoff.Takeoff;

/** The drainage as somebody reads it who has the JSON ledger and nothing else of the program. */
final class WaterLedger {

  private static final double SHARE = 1e-3;

  private final List<String> failures = new ArrayList<>();
  private final String name;
  private final JsonNode drainage;
  private final SortedMap<String, Double> own = new TreeMap<>();
  private final Set<String> junctions = new TreeSet<>();
  private final Set<String> nodes = new TreeSet<>();
  private final double rain;

  private WaterLedger(String name, JsonNode ledger) {
    this.name = name;
    this.drainage = ledger.get("drainage");
    ledger.get("roofFaces").forEach(f -> own.put(f.get("id").asText(), f.get("planAreaM2").asDouble()));
    ledger.get("junctions").forEach(j -> junctions.add(j.get("id").asText()));
    ledger.get("nodes").forEach(n -> nodes.add(n.get("id").asText()));
    this.rain = own.values().stream().mapToDouble(Double::doubleValue).sum();
  }

  /** What does not add up. */
  static List<String> unbalanced(String name, Takeoff takeoff) {
    try {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      JsonLedger.write(takeoff, out);
      WaterLedger ledger = new WaterLedger(name, new ObjectMapper().readTree(out.toByteArray()));
      ledger.leaves();
      ledger.faces();
      return ledger.failures;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Each place once, at a junction or at a node that the ledger has; with what is trapped they are the roof. */
  private void leaves() {
    Set<String> seen = new TreeSet<>();
    double gone = 0;
    for (JsonNode leaf : drainage.get("leaves")) {
      boolean known = leaf.has("node") ? nodes.contains(leaf.get("node").asText()) && junctions.contains(leaf.get("along").asText())
          : junctions.contains(leaf.get("junction").asText());
      String place = leaf.has("node") ? leaf.get("along").asText() : leaf.path("junction").asText();
      if (leaf.has("node") == leaf.has("junction") || !known || !seen.add(place)) {
        failures.add(name + ": leaves at " + leaf);
      }
      gone += leaf.get("planAreaM2").asDouble();
    }
    double stays = 0;
    for (JsonNode t : drainage.get("trapped")) {
      stays += t.get("planAreaM2").asDouble();
    }
    if (Math.abs(gone + stays - rain) > SHARE * rain) {
      failures.add(name + ": JSON has " + gone + " that leaves and " + stays + " that stays of " + rain);
    }
  }

  /** What a face passes on is its own rain and what comes onto it from faces and lines, less what it keeps. */
  private void faces() {
    SortedMap<String, Double> keeps = new TreeMap<>(own);
    for (JsonNode from : drainage.get("path")) {
      for (JsonNode to : from.get("to")) {
        keeps.merge(from.get("face").asText(), -to.get("planAreaM2").asDouble(), Double::sum);
      }
    }
    for (String list : List.of("path", "lines")) {
      for (JsonNode from : drainage.get(list)) {
        for (JsonNode to : from.get("to")) {
          if (to.has("face")) {
            keeps.merge(to.get("face").asText(), to.get("planAreaM2").asDouble(), Double::sum);
          }
        }
      }
    }
    SortedMap<String, Double> trapped = new TreeMap<>();
    drainage.get("trapped").forEach(t -> trapped.put(t.get("face").asText(), t.get("planAreaM2").asDouble()));
    keeps.forEach((face, amount) -> {
      // What is trapped may stand at a line at the face's low end: the face has passed that on.
      if (amount < -SHARE * rain || amount > trapped.getOrDefault(face, 0.0) + SHARE * rain) {
        failures.add(name + ": " + face + " keeps " + amount + ", trapped are " + trapped.get(face));
      }
    });
  }
}
