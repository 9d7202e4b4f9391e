package org.seamledger.ledger;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * Copies a junction or a joint from a result twice while it is read: whole, and shortened for the outline. Numbers are copied as they are
 * written.
 */
final class LineSplit {

  private static final Set<String> LEFT_OUT = Set.of("steps", "explanation", "closures", "plugs", "holdPoints");

  private final JsonParser in;
  private final JsonGenerator whole;
  private final JsonGenerator brief;
  private String id = "";
  private long metalParts;
  private JsonNode seals = MissingNode.getInstance();
  private JsonNode fasteners = MissingNode.getInstance();
  private String upstand;

  private LineSplit(JsonParser in, JsonGenerator whole, JsonGenerator brief) {
    this.in = in;
    this.whole = whole;
    this.brief = brief;
  }

  /** @param in stands at the begin of the object, and then at its end; @return its id */
  static String copy(JsonParser in, JsonGenerator whole, JsonGenerator brief) throws IOException {
    LineSplit split = new LineSplit(in, whole, brief);
    whole.writeStartObject();
    brief.writeStartObject();
    while (in.nextToken() == JsonToken.FIELD_NAME) {
      String name = in.currentName();
      whole.writeFieldName(name);
      in.nextToken();
      split.field(name);
    }
    whole.writeEndObject();
    split.sums();
    brief.writeEndObject();
    return split.id;
  }

  private void field(String name) throws IOException {
    switch (name) {
      case "seals" -> seals = tree();
      case "fasteners" -> fasteners = tree();
      case "metal" -> metalParts = items();
      case "facts" -> facts();
      default -> {
        if (LEFT_OUT.contains(name)) {
          value(whole);
        } else {
          id = name.equals("id") ? in.getText() : id;
          brief.writeFieldName(name);
          value(whole, brief);
        }
      }
    }
  }

  private JsonNode tree() throws IOException {
    JsonNode tree = in.readValueAsTree();
    whole.writeTree(tree);
    return tree;
  }

  /** Copies an array to the whole line; the number of its items. */
  private long items() throws IOException {
    if (!in.isExpectedStartArrayToken()) {
      value(whole);
      return 0;
    }
    long count = 0;
    whole.writeStartArray();
    while (in.nextToken() != JsonToken.END_ARRAY) {
      value(whole);
      count++;
    }
    whole.writeEndArray();
    return count;
  }

  private void facts() throws IOException {
    if (!in.isExpectedStartObjectToken()) {
      value(whole);
      return;
    }
    whole.writeStartObject();
    while (in.nextToken() == JsonToken.FIELD_NAME) {
      String name = in.currentName();
      whole.writeFieldName(name);
      in.nextToken();
      upstand = name.equals("upstandM") && in.currentToken().isNumeric() ? in.getText() : upstand;
      value(whole);
    }
    whole.writeEndObject();
  }

  /** Copies the value that the parser stands at. */
  private void value(JsonGenerator... to) throws IOException {
    int depth = 0;
    do {
      depth += in.currentToken().isStructStart() ? 1 : in.currentToken().isStructEnd() ? -1 : 0;
      for (JsonGenerator out : to) {
        event(out);
      }
    } while (depth > 0 && in.nextToken() != null);
  }

  private void event(JsonGenerator out) throws IOException {
    if (in.currentToken().isNumeric()) {
      out.writeNumber(in.getTextCharacters(), in.getTextOffset(), in.getTextLength());
    } else {
      out.copyCurrentEvent(in);
    }
  }

  private void sums() throws IOException {
    brief.writeFieldName("seals");
    brief.writeTree(LedgerReader.PLAIN.valueToTree(sealSums(seals)));
    brief.writeNumberField("fasteners",
        LedgerReader.all(fasteners, LedgerReader.Counted.class).stream().mapToLong(LedgerReader.Counted::count).sum());
    brief.writeNumberField("metalParts", metalParts);
    if (upstand != null) {
      brief.writeObjectFieldStart("facts");
      brief.writeFieldName("upstandM");
      brief.writeNumber(upstand);
      brief.writeEndObject();
    }
  }

  /** Summed by form and exposure, in the order in which each comes first. */
  private static List<LedgerReader.Seal> sealSums(JsonNode all) throws IOException {
    List<LedgerReader.Seal> sums = new ArrayList<>();
    for (LedgerReader.Seal seal : LedgerReader.all(all, LedgerReader.Seal.class)) {
      int same = 0;
      while (same < sums.size() && !isAlike(sums.get(same), seal)) {
        same++;
      }
      if (same == sums.size()) {
        sums.add(new LedgerReader.Seal(seal.form(), seal.exposure(), 0));
      }
      sums.set(same, new LedgerReader.Seal(seal.form(), seal.exposure(), LedgerParts.rounded(sums.get(same).lengthM() + seal.lengthM())));
    }
    return sums;
  }

  private static boolean isAlike(LedgerReader.Seal a, LedgerReader.Seal b) {
    return Objects.equals(a.form(), b.form()) && Objects.equals(a.exposure(), b.exposure());
  }
}
