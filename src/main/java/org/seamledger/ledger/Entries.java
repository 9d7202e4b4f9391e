package org.seamledger.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What differs in lists whose items have ids, whatever else they hold. */
final class Entries {

  private Entries() {
  }

  /** By the names of the lists; a list that a result lacks is empty, and an item without an id is left out. */
  static List<Comparison.Entry> compare(Map<String, JsonNode> before, Map<String, JsonNode> after) {
    List<Comparison.Entry> entries = new ArrayList<>();
    after.forEach((list, items) -> {
      Map<String, JsonNode> old = byId(before.get(list));
      Map<String, JsonNode> now = byId(items);
      now.forEach((id, item) -> {
        List<String> fields = old.containsKey(id) ? differing(old.get(id), item) : List.of();
        if (!old.containsKey(id)) {
          entries.add(new Comparison.Entry(list, id, "added", List.of()));
        } else if (!fields.isEmpty()) {
          entries.add(new Comparison.Entry(list, id, "changed", fields));
        }
      });
      old.keySet().stream().filter(id -> !now.containsKey(id))
          .forEach(id -> entries.add(new Comparison.Entry(list, id, "gone", List.of())));
    });
    return List.copyOf(entries);
  }

  private static Map<String, JsonNode> byId(JsonNode list) {
    Map<String, JsonNode> byId = new LinkedHashMap<>();
    if (list != null && list.isArray()) {
      list.forEach(item -> {
        if (item.path("id").isTextual()) {
          byId.put(item.path("id").textValue(), item);
        }
      });
    }
    return byId;
  }

  private static List<String> differing(JsonNode old, JsonNode now) {
    Set<String> names = new LinkedHashSet<>();
    old.fieldNames().forEachRemaining(names::add);
    now.fieldNames().forEachRemaining(names::add);
    return names.stream().filter(n -> !old.path(n).equals(now.path(n))).toList();
  }
}
