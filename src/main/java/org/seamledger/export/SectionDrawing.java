package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.node.NodeSheet;
import org.seamledger.export.section.SectionSheet;
import org.seamledger.export.section.StoredSections;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.node.KindedNode;
import org.seamledger.takeoff.Takeoff;

/**
 * A section square to a junction's line, through its detail, to scale, as SVG. Every number comes from the roof system in force and the
 * model; what is drawn is what the detail has.
 */
public final class SectionDrawing {

  private SectionDrawing() {
  }

  /**
   * The drawing as SVG text, of a node plan and oblique view; the same takeoff gives the same text.
   *
   * @throws IllegalArgumentException where there is no junction and no node of that id
   */
  public static String svg(Takeoff takeoff, String junctionId, SheetSetup setup) {
    Optional<KindedNode> node = takeoff.nodes().stream().filter(n -> n.id().equals(junctionId)).findFirst();
    if (node.isPresent()) {
      return NodeSheet.svg(takeoff, node.get(), setup);
    }
    DetailedJunction found = takeoff.lines().stream().filter(j -> j.junction().junction().id().equals(junctionId)).findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no junction and no node has the id " + junctionId));
    return SectionSheet.draw(takeoff, setup, found);
  }

  /** What the sections of all lines show, to be kept in parts; {@link #fromParts} draws from these. */
  public static List<byte[]> parts(Takeoff takeoff) {
    return StoredSections.write(takeoff);
  }

  /**
   * The section at a line, the same text as from the takeoff; empty where it can't be drawn from what was kept.
   *
   * @param kept a part by its number, or nothing
   */
  public static Optional<String> fromParts(IntFunction<Optional<byte[]>> kept, String line, SheetSetup setup) {
    return StoredSections.svg(kept, line, setup);
  }

  /** Writes the drawing as UTF-8 and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, String junctionId, SheetSetup setup, OutputStream out) throws IOException {
    out.write(svg(takeoff, junctionId, setup).getBytes(StandardCharsets.UTF_8));
    out.flush();
  }
}
