package org.seamledger.ledger;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPInputStream;
import org.seamledger.ledger.LedgerReader.Face;
import org.seamledger.ledger.LedgerReader.Found;
import org.seamledger.ledger.LedgerReader.Line;

/** The parts of a result that comparing and reviewing need; the rest of the document is skipped while reading. */
record ResultOutline(int contract, List<Line> junctions, List<Found> findings, JsonNode quantities, List<Face> roofFaces) {

  ResultOutline {
    junctions = List.copyOf(junctions);
    findings = List.copyOf(findings);
    roofFaces = List.copyOf(roofFaces);
  }

  /** What has been read so far. */
  private static final class Draft implements LedgerReader.Fields {
    private int contract;
    private final List<Line> junctions = new ArrayList<>();
    private final List<Found> findings = new ArrayList<>();
    private final List<Face> roofFaces = new ArrayList<>();
    private JsonNode quantities = MissingNode.getInstance();

    @Override
    public void read(String name, JsonParser value) throws IOException {
      switch (name) {
        case "contract" -> contract = value.getIntValue();
        case "junctions" -> LedgerReader.each(value, item -> junctions.add(line(item)));
        case "findings" -> findings.addAll(LedgerReader.all(value, Found.class));
        case "roofFaces" -> roofFaces.addAll(LedgerReader.all(value, Face.class));
        case "quantities" -> quantities = value.readValueAsTree();
        default -> value.skipChildren();
      }
    }

    private static Line line(JsonParser item) throws IOException {
      Line line = item.readValueAs(Line.class);
      if (line.id() == null || line.kind() == null || line.path() == null || line.path().length == 0) {
        throw new IOException("a junction of the result lacks its id, kind or path");
      }
      return line;
    }
  }

  static ResultOutline read(InputStream json) throws IOException {
    Draft d = new Draft();
    LedgerReader.read(json, d);
    return new ResultOutline(d.contract, d.junctions, d.findings, d.quantities, d.roofFaces);
  }

  static ResultOutline of(StoredLedger ledger) {
    try (InputStream in = new GZIPInputStream(new ByteArrayInputStream(ledger.gzip()), 1 << 16)) {
      return read(in);
    } catch (IOException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE, "A stored result cannot be read: " + e.getMessage(), e);
    }
  }

  /**
   * Ids of the findings, in their order. A finding has no id of its own in a result; its code, junction and elements make one that is the
   * same in the next revision although the figures in its message differ. The ordinal tells findings apart that agree in all of these.
   */
  List<String> findingIds() {
    Map<String, Integer> seen = new HashMap<>();
    return findings.stream().map(f -> {
      String key = f.code() + "\n" + (f.junction() == null ? "" : f.junction()) + "\n" + f.elements();
      int ordinal = seen.merge(key, 1, Integer::sum);
      return Digests.shortId(key + "\n" + ordinal);
    }).toList();
  }
}
