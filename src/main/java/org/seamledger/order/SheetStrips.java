package org.seamledger.order;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.seamledger.order.stock.StockPlan;
import org.seamledger.quantity.RoofSystem;

/**
 * Flat sheet for trims that a shop bends itself: strips of each girth, side by side from sheets as long as a stock length.
 *
 * @param widthM of a sheet or coil
 * @param lengthM of a sheet
 * @param sheets needed
 * @param bound that no plan beats
 * @param strips by girth, ascending
 * @param tooWide girths that no sheet is wide enough for, metres
 */
public record SheetStrips(double widthM, double lengthM, int sheets, int bound, List<Strip> strips, List<Double> tooWide) {

  public SheetStrips {
    strips = List.copyOf(strips);
    tooWide = List.copyOf(tooWide);
  }

  /** @param across how many fit beside each other where nothing else is cut from the sheet */
  public record Strip(double girthM, int count, int across) {
  }

  static List<SheetStrips> of(List<OrderLine> lines, RoofSystem system) {
    TreeMap<Double, Integer> byGirth = new TreeMap<>();
    for (OrderLine line : lines) {
      if (line.group() == OrderGroup.TRIMS && line.measures().containsKey("m2")) {
        byGirth.merge(Math.round(line.measures().get("m2") / (line.withWaste() / (1 + line.wasteShare())) * 1e4) / 1e4, (int) line.order(),
            Integer::sum);
      }
    }
    double width = system.purchase().coil().trimWidth().value();
    List<Strip> strips = new ArrayList<>();
    List<Double> each = new ArrayList<>();
    List<Double> tooWide = new ArrayList<>();
    byGirth.forEach((girth, count) -> {
      if (girth > width) {
        tooWide.add(girth);
      } else {
        strips.add(new Strip(girth, count, (int) Math.floor(width / girth + 1e-9)));
        each.addAll(java.util.Collections.nCopies(count, girth));
      }
    });
    if (strips.isEmpty() && tooWide.isEmpty()) {
      return List.of();
    }
    StockPlan plan = StockPlan.of(each, width, 0.001, 0);
    return List.of(new SheetStrips(width, system.flashing().length().value(), plan.bars().size(), plan.bound(), strips, tooWide));
  }
}
