package org.seamledger.http;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/**
 * A stored result in the parts that a client looks at: an outline, which is everything but what concerns one junction alone, and each
 * junction whole. A browser takes longer to receive a large result than to do anything else with it (measured: 92 MB for 20,000 junctions,
 * half of all its time), and of most junctions nobody reads the arithmetic.
 *
 * <p>In the outline a junction keeps all its fields but these: steps, explanation, closures, plugs and metal go; {@code seals} are summed by
 * form and exposure, {@code fasteners} to one number, of {@code facts} only {@code upstandM} stays; {@code metalParts} counts the metal. Of
 * the quantities the list of panels goes; {@code panelSum} has their number, length and area.
 */
final class LedgerParts {

  private static final Set<String> LEFT_OUT = Set.of("steps", "explanation", "closures", "plugs", "metal", "seals", "fasteners", "facts");
  private static final int CHUNK = 1 << 18;
  /** Reads part of a document: what follows a part is no fault. */
  private static final ObjectMapper PLAIN = new ObjectMapper();

  private record Place(int chunk, int from, int to) {
  }

  private final byte[] outline;
  private final List<byte[]> chunks = new ArrayList<>();
  private final Map<String, Place> places = new HashMap<>();

  private LedgerParts(byte[] ledger) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (JsonParser in = PLAIN.createParser(new GZIPInputStream(new ByteArrayInputStream(ledger), 1 << 16));
        JsonGenerator out = PLAIN.createGenerator(new GZIPOutputStream(bytes, 1 << 16))) {
      in.nextToken();
      out.writeStartObject();
      while (in.nextToken() == JsonToken.FIELD_NAME) {
        String name = in.currentName();
        out.writeFieldName(name);
        in.nextToken();
        switch (name) {
          case "junctions" -> junctions(in, out);
          case "quantities" -> out.writeTree(quantities(in.readValueAsTree()));
          default -> out.copyCurrentStructure(in);
        }
      }
      out.writeEndObject();
    }
    outline = bytes.toByteArray();
  }

  /** The parts of a result that is stored as gzipped JSON. */
  static LedgerParts of(byte[] ledger) {
    try {
      return new LedgerParts(ledger);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The outline, gzipped JSON. */
  byte[] outline() {
    return outline;
  }

  /** One junction whole, JSON; empty where there is none of that id. */
  Optional<byte[]> junction(String id) {
    return Optional.ofNullable(places.get(id)).map(p -> Arrays.copyOfRange(unpacked(chunks.get(p.chunk())), p.from(), p.to()));
  }

  private void junctions(JsonParser in, JsonGenerator out) throws IOException {
    ByteArrayOutputStream chunk = new ByteArrayOutputStream();
    out.writeStartArray();
    while (in.nextToken() == JsonToken.START_OBJECT) {
      ObjectNode junction = in.readValueAsTree();
      int from = chunk.size();
      chunk.write(PLAIN.writeValueAsBytes(junction));
      places.put(junction.path("id").asText(), new Place(chunks.size(), from, chunk.size()));
      if (chunk.size() > CHUNK) {
        chunks.add(PageFiles.gzip(chunk.toByteArray()));
        chunk.reset();
      }
      out.writeTree(shortened(junction));
    }
    out.writeEndArray();
    chunks.add(PageFiles.gzip(chunk.toByteArray()));
  }

  private static ObjectNode shortened(ObjectNode whole) {
    ObjectNode junction = PLAIN.createObjectNode();
    whole.properties().forEach(f -> {
      if (!LEFT_OUT.contains(f.getKey())) {
        junction.set(f.getKey(), f.getValue());
      }
    });
    junction.set("seals", seals(whole.path("seals")));
    long fasteners = 0;
    for (JsonNode row : whole.path("fasteners")) {
      fasteners += row.path("count").asLong();
    }
    junction.put("fasteners", fasteners);
    junction.put("metalParts", whole.path("metal").size());
    if (whole.path("facts").has("upstandM")) {
      junction.putObject("facts").set("upstandM", whole.path("facts").path("upstandM"));
    }
    return junction;
  }

  /** Summed by form and exposure, in the order in which each comes first. */
  private static ArrayNode seals(JsonNode all) {
    ArrayNode sums = PLAIN.createArrayNode();
    for (JsonNode seal : all) {
      ObjectNode sum = null;
      for (JsonNode s : sums) {
        boolean same = s.path("form").equals(seal.path("form")) && s.path("exposure").equals(seal.path("exposure"));
        sum = same ? (ObjectNode) s : sum;
      }
      if (sum == null) {
        sum = sums.addObject();
        sum.set("form", seal.path("form"));
        sum.set("exposure", seal.path("exposure"));
        sum.put("lengthM", 0.0);
      }
      // Rounded as the result is, so that a sum of decimals has no tail.
      sum.put("lengthM", Math.round((sum.path("lengthM").asDouble() + seal.path("lengthM").asDouble()) * 1e6) / 1e6);
    }
    return sums;
  }

  private static ObjectNode quantities(ObjectNode quantities) {
    long count = 0;
    double length = 0;
    double area = 0;
    for (JsonNode panel : quantities.path("panels")) {
      long n = panel.path("count").asLong();
      count += n;
      length += n * panel.path("lengthM").asDouble();
      area += n * panel.path("areaM2").asDouble();
    }
    int kinds = quantities.path("panels").size();
    quantities.remove("panels");
    quantities.putObject("panelSum").put("kinds", kinds).put("count", count).put("lengthM", Math.round(length * 1e6) / 1e6)
        .put("areaM2", Math.round(area * 1e6) / 1e6);
    return quantities;
  }

  private static byte[] unpacked(byte[] gzip) {
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(gzip))) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
