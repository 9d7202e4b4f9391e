package org.seamledger.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** The numbers of a result by their paths, such as {@code tape.orderM}; items of lists go by what people tell them apart by. */
final class Figures {

  /** Numbers of the order are lengths, volumes and counts; what differs by less is rounding. */
  private static final double SAME = 1e-6;
  private static final double MM = 1000;

  private final Map<String, Double> figures = new LinkedHashMap<>();

  private Figures() {
  }

  /** What is ordered: the quantities, and the lines of the order where the result has them. */
  static Map<String, Double> ofOrder(ResultOutline result) {
    Figures all = new Figures();
    all.numbers("", result.quantities());
    if (result.order() != null) {
      all.numbers("order", result.order());
    }
    return all.figures;
  }

  /** What one line takes: its length, seals by their form, fasteners by their place, metal by its part, closures. */
  static Map<String, Double> ofLine(LedgerReader.Line line) {
    Figures all = new Figures();
    all.sum("lengthM", line.lengthM());
    all.each(line.seals(), (path, seal) -> all.sum(path + ".lengthM", seal.path("lengthM").asDouble()), "form");
    all.each(line.fasteners(), (path, row) -> all.sum("fasteners." + path + ".count", row.path("count").asDouble()), "place");
    all.each(line.metal(), (path, part) -> {
      all.sum("metal." + path + ".pieces", part.path("pieces").asDouble());
      all.sum("metal." + path + ".lengthM", part.path("lengthM").asDouble());
    }, "part");
    all.each(line.closures(), (path, cut) -> all.sum("closures." + path + ".count", cut.path("count").asDouble()), "part");
    return all.figures;
  }

  /** Takes in one item. */
  private interface Item {
    void take(String name, JsonNode item);
  }

  private void each(JsonNode list, Item item, String field) {
    if (list != null) {
      list.forEach(i -> item.take(i.path(field).asText(""), i));
    }
  }

  private void sum(String path, double value) {
    figures.merge(path, value, Double::sum);
  }

  private void numbers(String path, JsonNode node) {
    if (node.isNumber()) {
      sum(path, node.doubleValue());
    } else if (node.isObject()) {
      node.properties().forEach(e -> numbers(path.isEmpty() ? e.getKey() : path + "." + e.getKey(), e.getValue()));
    } else if (node.isArray()) {
      node.forEach(item -> item(path, item));
    }
  }

  private void item(String path, JsonNode item) {
    if (item.path("id").isTextual() || item.path("part").isTextual()) {
      numbers(path + "." + item.path(item.path("id").isTextual() ? "id" : "part").textValue(), item);
    } else if (item.path("diameterM").isNumber()) {
      sum(path + "." + mm(item, "diameterM") + " mm.count", item.path("count").asDouble());
    } else if (item.path("widthM").isNumber() && item.path("depthM").isNumber()) {
      sum(path + "." + mm(item, "widthM") + " × " + mm(item, "depthM") + " mm.count", item.path("count").asDouble());
    } else if (item.path("count").isNumber()) {
      // The cut list of panels: hundreds of rows, each another length; together they are what is ordered.
      double count = item.path("count").asDouble();
      sum(path + ".count", count);
      sum(path + ".lengthM", count * item.path("lengthM").asDouble());
      sum(path + ".areaM2", count * item.path("areaM2").asDouble());
    }
  }

  private static long mm(JsonNode item, String field) {
    return Math.round(item.path(field).asDouble() * MM);
  }

  /** The numbers side by side, those of the older result first. @param only leaves out what is the same in both */
  static List<Comparison.Amount> differing(Map<String, Double> before, Map<String, Double> after, boolean only) {
    Set<String> names = new LinkedHashSet<>(before.keySet());
    names.addAll(new TreeSet<>(after.keySet()));
    List<Comparison.Amount> amounts = new ArrayList<>();
    for (String name : names) {
      Comparison.Amount a = new Comparison.Amount(name, before.getOrDefault(name, Double.NaN), after.getOrDefault(name, Double.NaN));
      if (!only || !(Math.abs(a.after() - a.before()) <= SAME)) {
        amounts.add(a);
      }
    }
    return amounts;
  }
}
