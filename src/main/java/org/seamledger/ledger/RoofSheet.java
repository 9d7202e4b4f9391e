package org.seamledger.ledger;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.seamledger.journal.WorkItem;
import org.seamledger.journal.WorkPlace;

/**
 * What a telephone keeps of a roof to work there without a connection: the outlines of its faces, its junctions and nodes with their place,
 * what is counted there and what there is to tick, and the words for kinds and details. Metres and degrees, as in the result.
 */
public final class RoofSheet implements LedgerReader.Fields {

  private static final List<String> OF_FACE = List.of("id", "facets", "slopeDegrees", "fallAzimuthDegrees", "areaM2");
  private static final List<String> OF_PLACE = List.of("id", "kind", "detail", "lengthM", "path", "at", "faces", "junctions");
  private static final List<String> OF_COUNT =
      List.of("part", "place", "face", "form", "exposure", "pieces", "count", "lengthM", "spacingM", "type");
  private static final List<String> COUNTS = List.of("metal", "closures", "seals", "fasteners");

  private final JsonGenerator out;
  private final Map<String, WorkPlace> places;

  private RoofSheet(JsonGenerator out, List<WorkPlace> places) {
    this.out = out;
    this.places = places.stream().collect(Collectors.toMap(WorkPlace::id, Function.identity(), (a, b) -> a, HashMap::new));
  }

  /**
   * JSON.
   *
   * @param title of the analysis
   * @param places of the same result
   */
  public static byte[] json(String analysis, String title, StoredLedger ledger, List<WorkPlace> places) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (JsonGenerator out = LedgerReader.PLAIN.createGenerator(bytes)) {
      out.writeStartObject();
      out.writeStringField("analysis", analysis);
      out.writeStringField("title", title);
      out.writeStringField("result", ledger.sha256());
      LedgerReader.unpack(ledger.gzip(), new RoofSheet(out, places));
      out.writeEndObject();
    } catch (IOException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE, "A stored result cannot be read: " + e.getMessage(), e);
    }
    return bytes.toByteArray();
  }

  @Override
  public void read(String name, JsonParser value) throws IOException {
    switch (name) {
      case "roofFaces" -> list(name, value, one -> only(one, OF_FACE));
      case "junctions", "nodes" -> list(name, value, this::place);
      case "kinds", "nodeKinds" -> list(name, value, one -> only(one, List.of("id", "label")));
      case "details" -> list(name, value, one -> only(one, List.of("id", "title")));
      default -> value.skipChildren();
    }
  }

  private void list(String name, JsonParser value, Function<ObjectNode, ObjectNode> shortening) throws IOException {
    out.writeArrayFieldStart(name);
    LedgerReader.each(value, item -> out.writeTree(shortening.apply(item.readValueAsTree())));
    out.writeEndArray();
  }

  private static ObjectNode only(ObjectNode whole, List<String> fields) {
    return whole.deepCopy().retain(fields);
  }

  private ObjectNode place(ObjectNode whole) {
    ObjectNode place = only(whole, OF_PLACE);
    for (String count : COUNTS) {
      for (JsonNode line : whole.path(count)) {
        place.withArray(count).add(only((ObjectNode) line, OF_COUNT));
      }
    }
    WorkPlace work = places.get(whole.path("id").asText());
    place.set("items", LedgerReader.PLAIN.valueToTree(work == null ? List.<WorkItem>of() : work.items()));
    return place;
  }
}
