package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.seamledger.detail.Seal;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.KindedNode;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;
import org.seamledger.takeoff.Takeoff;

/** Where lines end and meet, as comma-separated values: one header row, one row a node. */
public final class NodesCsv {

  private static final double ML_PER_M3 = 1e6;

  private NodesCsv() {
  }

  /** Writes all rows and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    Rows rows = new Rows(out);
    rows(takeoff, rows);
    rows.flush();
  }

  /** All rows, the header first. */
  public static void rows(Takeoff takeoff, RowSink rows) throws IOException {
    rows.row(List.of("id", "kind", "label", "x", "y", "z", "junctions", "faces", "pieces", "parts", "tapeM", "beadM", "beadMl", "inSeamM",
        "fasteners", "findings"));
    Map<String, SortedSet<String>> codes = takeoff.codesByJunction();
    for (KindedNode node : takeoff.nodes()) {
      rows.row(cells(takeoff, node, codes.getOrDefault(node.id(), new TreeSet<>())));
    }
  }

  private static List<String> cells(Takeoff takeoff, KindedNode node, SortedSet<String> codes) {
    Vec3 at = takeoff.world(node.node().at());
    JunctionQuantities takes = takeoff.quantities().byJunction().get(node.id());
    return List.of(node.id(), node.kind().id(), node.kind().label(), Rows.number(at.x()), Rows.number(at.y()), Rows.number(at.z()),
        String.join(" ", node.node().junctions()), String.join(" ", node.node().faces()),
        Integer.toString(takes.metal().stream().mapToInt(MetalLine::pieces).sum()),
        takes.metal().stream().map(m -> m.pieces() + " " + m.part()).collect(Collectors.joining("; ")),
        Rows.number(length(takes, Seal.Form.TAPE)), Rows.number(length(takes, Seal.Form.BEAD)),
        Rows.number(takes.seals().stream().mapToDouble(SealLine::volumeM3).sum() * ML_PER_M3),
        Rows.number(length(takes, Seal.Form.IN_SEAM)), Integer.toString(takes.fasteners().stream().mapToInt(FastenerRow::count).sum()),
        String.join(" ", codes));
  }

  private static double length(JunctionQuantities takes, Seal.Form form) {
    return takes.seals().stream().filter(s -> s.form() == form).mapToDouble(SealLine::lengthM).sum();
  }
}
