package org.seamledger.ledger;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JsonNode;
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
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/**
 * A stored result in the parts that a client looks at: an outline, which is everything but what concerns one junction alone, and each
 * junction whole. A browser takes longer to receive a large result than to do anything else with it (measured: 92 MB for 20,000 junctions,
 * half of all its time), and of most junctions nobody reads the arithmetic.
 *
 * <p>In the outline a junction, or a joint of panels, keeps all its fields but these: steps, explanation, closures, plugs, hold points and
 * metal go; {@code seals} are summed by form and exposure, {@code fasteners} to one number, of {@code facts} only {@code upstandM} stays;
 * {@code metalParts} counts the metal. A node keeps id, kind, place, junctions, faces and findings; {@code pieces} counts its metal. Lines
 * of the order lose the arithmetic, junctions, faces and measures. The panels, where each is fixed and how far it moves, are a part of
 * their own; the list of the quantities goes, and {@code panelSum} has their number, length and area.
 */
public final class LedgerParts {

  private static final Set<String> LEFT_OUT = Set.of("steps", "explanation", "closures", "plugs", "holdPoints", "metal", "seals",
      "fasteners", "facts");
  private static final String PANELS = "panels";
  private static final int CHUNK = 1 << 18;
  private record Place(int chunk, int from, int to) {
  }

  private final byte[] outline;
  private byte[] panels;
  private final List<byte[]> chunks = new ArrayList<>();
  private final Map<String, Place> places = new HashMap<>();

  private LedgerParts(byte[] ledger) throws IOException {
    panels = gzip(new byte[] {'[', ']'});
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (JsonGenerator out = LedgerReader.PLAIN.createGenerator(new GZIPOutputStream(bytes, 1 << 16))) {
      out.writeStartObject();
      LedgerReader.unpack(ledger, (name, value) -> {
        if (name.equals(PANELS)) {
          panels = panels(value);
          return;
        }
        out.writeFieldName(name);
        switch (name) {
          case "junctions", "joints" -> parts(value, out, LedgerParts::shortened);
          case "nodes" -> parts(value, out, LedgerParts::shortenedNode);
          case "order" -> order(value, out);
          case "quantities" -> out.writeTree(quantities(value.readValueAsTree()));
          default -> out.copyCurrentStructure(value);
        }
      });
      out.writeEndObject();
    }
    outline = bytes.toByteArray();
  }

  /** The parts of a result that is stored as gzipped JSON. */
  public static LedgerParts of(byte[] ledger) {
    try {
      return new LedgerParts(ledger);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The outline, gzipped JSON. */
  public byte[] outline() {
    return outline;
  }

  /** The panels with their fixed lines and movement, gzipped JSON: an array, empty where the result has none. */
  public byte[] panels() {
    return panels;
  }

  /** One junction, joint or node whole, JSON; empty where there is none of that id. */
  public Optional<byte[]> junction(String id) {
    return Optional.ofNullable(places.get(id)).map(p -> Arrays.copyOfRange(unpacked(chunks.get(p.chunk())), p.from(), p.to()));
  }

  private static byte[] panels(JsonParser in) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (JsonGenerator out = LedgerReader.PLAIN.createGenerator(new GZIPOutputStream(packed))) {
      out.copyCurrentStructure(in);
    }
    return packed.toByteArray();
  }

  private interface Shortening {
    ObjectNode of(ObjectNode whole) throws IOException;
  }

  private void parts(JsonParser in, JsonGenerator out, Shortening shortening) throws IOException {
    ByteArrayOutputStream chunk = new ByteArrayOutputStream();
    out.writeStartArray();
    LedgerReader.each(in, item -> {
      ObjectNode junction = item.readValueAsTree();
      int from = chunk.size();
      chunk.write(LedgerReader.PLAIN.writeValueAsBytes(junction));
      places.put(junction.path("id").asText(), new Place(chunks.size(), from, chunk.size()));
      if (chunk.size() > CHUNK) {
        chunks.add(gzip(chunk.toByteArray()));
        chunk.reset();
      }
      out.writeTree(shortening.of(junction));
    });
    out.writeEndArray();
    chunks.add(gzip(chunk.toByteArray()));
  }

  /** How a line of the order came about stands in the order as a table. */
  private static void order(JsonParser in, JsonGenerator out) throws IOException {
    out.writeStartArray();
    LedgerReader.each(in, item -> {
      ObjectNode line = item.readValueAsTree();
      line.remove(List.of("junctions", "faces", "measures", "steps"));
      out.writeTree(line);
    });
    out.writeEndArray();
  }

  private static ObjectNode shortened(ObjectNode whole) throws IOException {
    ObjectNode junction = LedgerReader.PLAIN.createObjectNode();
    whole.properties().forEach(f -> {
      if (!LEFT_OUT.contains(f.getKey())) {
        junction.set(f.getKey(), f.getValue());
      }
    });
    junction.set("seals", seals(whole.path("seals")));
    junction.put("fasteners",
        LedgerReader.all(whole.path("fasteners"), LedgerReader.Counted.class).stream().mapToLong(LedgerReader.Counted::count).sum());
    junction.put("metalParts", whole.path("metal").size());
    if (whole.path("facts").has("upstandM")) {
      junction.putObject("facts").set("upstandM", whole.path("facts").path("upstandM"));
    }
    return junction;
  }

  private static long pieces(JsonNode metal) {
    long sum = 0;
    for (JsonNode line : metal) {
      sum += line.path("pieces").asLong();
    }
    return sum;
  }

  /** Of a node the outline has where it is and what it is. */
  private static ObjectNode shortenedNode(ObjectNode whole) {
    ObjectNode node = whole.deepCopy();
    node.put("pieces", pieces(whole.path("metal")));
    node.remove(List.of("steps", "holdPoints", "metal", "seals", "fasteners", "facts"));
    return node;
  }

  /** Summed by form and exposure, in the order in which each comes first. */
  private static ArrayNode seals(JsonNode all) throws IOException {
    List<LedgerReader.Seal> sums = new ArrayList<>();
    for (LedgerReader.Seal seal : LedgerReader.all(all, LedgerReader.Seal.class)) {
      int same = 0;
      while (same < sums.size() && !isAlike(sums.get(same), seal)) {
        same++;
      }
      if (same == sums.size()) {
        sums.add(new LedgerReader.Seal(seal.form(), seal.exposure(), 0));
      }
      sums.set(same, new LedgerReader.Seal(seal.form(), seal.exposure(), rounded(sums.get(same).lengthM() + seal.lengthM())));
    }
    return LedgerReader.PLAIN.valueToTree(sums);
  }

  private static boolean isAlike(LedgerReader.Seal a, LedgerReader.Seal b) {
    return Objects.equals(a.form(), b.form()) && Objects.equals(a.exposure(), b.exposure());
  }

  /** Rounded as the result is, so that a sum of decimals has no tail. */
  private static double rounded(double sum) {
    return Math.round(sum * 1e6) / 1e6;
  }

  private static ObjectNode quantities(ObjectNode quantities) throws IOException {
    long count = 0;
    double length = 0;
    double area = 0;
    List<LedgerReader.Panels> panels = LedgerReader.all(quantities.path("panels"), LedgerReader.Panels.class);
    for (LedgerReader.Panels p : panels) {
      count += p.count();
      length += p.count() * p.lengthM();
      area += p.count() * p.areaM2();
    }
    quantities.remove("panels");
    quantities.putObject("panelSum").put("kinds", panels.size()).put("count", count).put("lengthM", rounded(length))
        .put("areaM2", rounded(area));
    return quantities;
  }

  private static byte[] gzip(byte[] plain) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
      out.write(plain);
    }
    return packed.toByteArray();
  }

  private static byte[] unpacked(byte[] gzip) {
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(gzip))) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
