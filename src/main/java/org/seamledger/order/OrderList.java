package org.seamledger.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.takeoff.Takeoff;

/**
 * Everything that is bought, each once: what isn't needed has no line.
 *
 * @param lines by group, then in the order in which things are drafted
 * @param sheets the trims again as strips of flat sheet, for a shop that bends them itself: no lines of the order
 */
public record OrderList(List<OrderLine> lines, List<SheetStrips> sheets) {

  public OrderList {
    lines = List.copyOf(lines);
    sheets = List.copyOf(sheets);
  }

  /** The order of a takeoff. */
  public static OrderList of(Takeoff takeoff) {
    OrderSource source = new OrderSource(takeoff);
    List<OrderLine> lines = new ArrayList<>();
    TrimLines trims = new TrimLines(source);
    lines.addAll(PanelLines.of(source));
    lines.addAll(ClipLines.of(source));
    lines.addAll(FaceLines.of(source));
    lines.addAll(SealantLines.of(source));
    lines.addAll(ClosureLines.of(source));
    lines.addAll(trims.lines());
    lines.addAll(PieceLines.of(source));
    lines.addAll(FastenerLines.of(source));
    lines.addAll(GutterLines.of(source));
    lines.addAll(SnowGuardLines.of(source));
    lines.sort(Comparator.comparing(OrderLine::group));
    return new OrderList(lines, SheetStrips.of(lines, takeoff.system()));
  }
}
