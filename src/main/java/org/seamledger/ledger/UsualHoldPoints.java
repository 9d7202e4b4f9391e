package org.seamledger.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.Map;
import org.seamledger.sequence.PlacedHoldPoint;

/**
 * Hold points of a place in a result that has them by detail only, as earlier versions of the program stored it: with the ids and locks
 * that the place has in a newer result.
 */
final class UsualHoldPoints {

  private UsualHoldPoints() {
  }

  /** @param ofDetail the detail's list of {@code before} and {@code check}, or null */
  static JsonNode of(JsonNode place, JsonNode ofDetail) {
    ArrayNode points = JsonNodeFactory.instance.arrayNode();
    if (ofDetail == null) {
      return points;
    }
    String id = place.path("id").asText();
    Map<String, Integer> seen = new HashMap<>();
    for (JsonNode h : ofDetail) {
      String slug = PlacedHoldPoint.slug(h.path("before").asText());
      int times = seen.merge(slug, 1, Integer::sum);
      ObjectNode point = points.addObject();
      point.put("id", id + "/before-" + slug + (times > 1 ? "-" + times : "")).put("before", h.path("before").asText())
          .put("check", h.path("check").asText()).put("step", id + "/" + slug);
    }
    if (!points.isEmpty() && hasUprightBead(place)) {
      JsonNode last = points.get(points.size() - 1);
      points.insertObject(points.size() - 1).put("id", id + "/" + PlacedHoldPoint.RECHECK).put("before", last.path("before").asText())
          .put("check", "Recheck before capping: no bead has slumped, ran down or left a gap; each stands to the top of its upright end")
          .put("step", last.path("step").asText()).put("locks", last.path("step").asText());
    }
    return points;
  }

  private static boolean hasUprightBead(JsonNode place) {
    for (JsonNode seal : place.path("seals")) {
      if ("bead".equals(seal.path("form").asText()) && "concealed".equals(seal.path("exposure").asText())
          && "per-piece".equals(seal.path("run").asText())) {
        return true;
      }
    }
    return false;
  }
}
