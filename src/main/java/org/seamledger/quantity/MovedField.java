package org.seamledger.quantity;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.seamledger.quantity.SystemFormatException.Problem;

/**
 * A field that files of before have at another place: whether gutters were bought, which is now the same question as whether they hang.
 * A file that states both is taken by the new one, since the program itself wrote both.
 */
final class MovedField {

  private static final String OLD = "purchase.gutters.hung";
  private static final String NEW = "eaves.gutters";

  private MovedField() {
  }

  /** Where a field stands now. */
  static String path(String field) {
    return field.equals(OLD) ? NEW : field;
  }

  /** The file with the field where it stands now; nothing else changes. */
  static JsonNode inPlace(JsonNode file, List<Problem> problems) {
    if (!file.path("purchase").path("gutters").has("hung")) {
      return file;
    }
    ObjectNode tree = file.deepCopy();
    JsonNode hung = ((ObjectNode) tree.get("purchase").get("gutters")).remove("hung");
    JsonNode eaves = tree.get("eaves");
    if (!hung.isBoolean()) {
      problems.add(new Problem(OLD, "true or false", SystemReader.describe(hung)));
    } else if (eaves == null) {
      tree.putObject("eaves").set("gutters", hung);
    } else if (eaves instanceof ObjectNode object && !object.has("gutters")) {
      object.set("gutters", hung);
    }
    return tree;
  }
}
