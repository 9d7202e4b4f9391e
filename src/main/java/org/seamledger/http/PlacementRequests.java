package org.seamledger.http;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.seamledger.ledger.StoredFile;
import org.seamledger.takeoff.Inputs;

/** Movements of models that clients ask for: a list of {@code {"model": 1, "movement": "dx,dy,dz[,degrees[,factor]]"}}. */
final class PlacementRequests {

  private static final int LONGEST = 200;

  private PlacementRequests() {
  }

  /** A list in a part of an upload, of its own. */
  static JsonNode parse(String text) {
    try {
      return JsonBodies.MAPPER.readTree(text);
    } catch (JsonProcessingException e) {
      throw refused("placements must be a JSON list, such as [{\"model\": 1, \"movement\": \"12,-3.5,0,90\"}].");
    }
  }

  /**
   * Files with the placements that a client asks for; models that it does not mention stay placed as they are.
   *
   * @param list a movement of null takes the placement of its model away
   * @throws HttpProblem where the list is none, or names a model that is not there
   */
  static List<StoredFile> on(List<StoredFile> files, JsonNode list) {
    List<Integer> models = new ArrayList<>();
    for (int i = 0; i < files.size(); i++) {
      if (files.get(i).role().equals("model")) {
        models.add(i);
      }
    }
    if (!list.isArray() || list.size() > models.size()) {
      throw refused("placements must be a list with at most one entry a model.");
    }
    List<StoredFile> placed = new ArrayList<>(files);
    Set<Integer> seen = new HashSet<>();
    for (JsonNode entry : list) {
      int model = model(entry.path("model"), models.size());
      if (!seen.add(model)) {
        throw refused("model " + model + " is placed twice.");
      }
      placed.set(models.get(model), files.get(models.get(model)).placed(movement(entry.path("movement"))));
    }
    return placed;
  }

  private static int model(JsonNode number, int models) {
    if (!number.isIntegralNumber() || !number.canConvertToInt() || number.intValue() < 0 || number.intValue() >= models) {
      throw refused("model must be the position of a model, from 0 to " + (models - 1) + ".");
    }
    return number.intValue();
  }

  private static Optional<String> movement(JsonNode text) {
    if (text.isNull()) {
      return Optional.empty();
    }
    if (!text.isTextual() || text.textValue().length() > LONGEST) {
      throw refused("movement must be a text, dx,dy,dz in metres and perhaps degrees and a factor, or null.");
    }
    try {
      return Optional.of(Inputs.placement(text.textValue()));
    } catch (IllegalArgumentException e) {
      throw refused("movement: " + Names.clean(e.getMessage()) + ".");
    }
  }

  private static HttpProblem refused(String why) {
    return HttpProblem.badRequest("body/placements", why);
  }
}
