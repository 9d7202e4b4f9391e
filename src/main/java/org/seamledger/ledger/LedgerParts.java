package org.seamledger.ledger;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
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

  private static final String PANELS = "panels";

  private final byte[] outline;
  private byte[] panels;
  private final WholeItems items = new WholeItems();

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
          case "junctions", "joints" -> lines(value, out);
          case "nodes" -> nodes(value, out);
          case "order" -> order(value, out);
          case "quantities" -> out.writeTree(quantities(value.readValueAsTree()));
          default -> out.copyCurrentStructure(value);
        }
      });
      out.writeEndObject();
    }
    items.close();
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
    return items.of(id);
  }

  private static byte[] panels(JsonParser in) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (JsonGenerator out = LedgerReader.PLAIN.createGenerator(new GZIPOutputStream(packed))) {
      out.copyCurrentStructure(in);
    }
    return packed.toByteArray();
  }

  private void lines(JsonParser in, JsonGenerator out) throws IOException {
    out.writeStartArray();
    LedgerReader.each(in, item -> items.written(LineSplit.copy(item, items.next(), out)));
    out.writeEndArray();
  }

  private void nodes(JsonParser in, JsonGenerator out) throws IOException {
    out.writeStartArray();
    LedgerReader.each(in, item -> {
      ObjectNode node = item.readValueAsTree();
      items.next().writeTree(node);
      items.written(node.path("id").asText());
      out.writeTree(shortened(node));
    });
    out.writeEndArray();
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

  private static long pieces(JsonNode metal) {
    long sum = 0;
    for (JsonNode line : metal) {
      sum += line.path("pieces").asLong();
    }
    return sum;
  }

  /** Of a node the outline has where it is and what it is. */
  private static ObjectNode shortened(ObjectNode node) {
    node.put("pieces", pieces(node.path("metal")));
    node.remove(List.of("steps", "holdPoints", "metal", "seals", "fasteners", "facts"));
    return node;
  }

  /** Rounded as the result is, so that a sum of decimals has no tail. */
  static double rounded(double sum) {
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
}
