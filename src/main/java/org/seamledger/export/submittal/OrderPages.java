package org.seamledger.export.submittal;

import java.util.List;
import java.util.Optional;
import org.seamledger.export.wording.CountText;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.order.CostedLine;
import org.seamledger.order.OrderGroup;
import org.seamledger.order.OrderLine;
import org.seamledger.order.PricedOrder;
import org.seamledger.takeoff.Takeoff;

/** Everything that is bought, each once, with what the drawing takes, waste, and whole packs. */
final class OrderPages implements SubmittalPages {

  /** Of net amounts; whole packs are what is ordered. */
  private static final int PLACES = 3;
  /** So many places a line are named; the schedule has the rest by detail. */
  private static final int NAMED = 6;

  private final SubmittalContent content;
  private final Takeoff takeoff;

  OrderPages(SubmittalContent content) {
    this.content = content;
    this.takeoff = content.takeoff();
  }

  @Override
  public OutlineEntry outline() {
    return new OutlineEntry(PageSet.ORDER.title(), SubmittalContent.place(PageSet.ORDER),
        groups().stream().map(g -> new OutlineEntry(capital(g.word()), place(g))).toList());
  }

  private static String place(OrderGroup group) {
    return SubmittalContent.place(PageSet.ORDER) + "-" + group.word();
  }

  private static String capital(String word) {
    return word.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + word.substring(1);
  }

  private List<OrderGroup> groups() {
    return content.order().lines().stream().map(OrderLine::group).distinct().toList();
  }

  @Override
  public void write(FoWriter fo) {
    content.frame().text(PageSet.ORDER.title(), 1, () -> pages(fo), fo);
  }

  private void pages(FoWriter fo) {
    FoHeadings.title(fo, SubmittalContent.place(PageSet.ORDER), PageSet.ORDER.title());
    if (content.order().lines().isEmpty()) {
      FoHeadings.paragraph(fo, "Nothing to order.");
      return;
    }
    FoHeadings.paragraph(fo,
        "Net is what the junctions and faces take; waste is added and whole packs are rounded up once, for the project. "
            + "Look at the findings before anything is ordered.");
    for (OrderGroup group : groups()) {
      FoHeadings.head(fo, place(group), capital(group.word()));
      group(content.order().lines().stream().filter(l -> l.group() == group).toList(), fo);
    }
    content.priced().ifPresent(p -> costs(p, fo));
  }

  private void group(List<OrderLine> lines, FoWriter fo) {
    FoTable table = content.priced().isPresent()
        ? FoTable.open(fo, words("Item", 24), words("Size", 24), number("Net", 9), words("Unit", 6), number("Waste %", 7),
            number("With waste", 9), number("Pack", 7), number("Order", 7), words("Sold by", 9), number("Price", 8), number("Cost", 9),
            words("For", 18))
        : FoTable.open(fo, words("Item", 24), words("Size", 26), number("Net", 9), words("Unit", 6), number("Waste %", 7),
            number("With waste", 9), number("Pack", 7), number("Order", 7), words("Sold by", 10), words("For", 25));
    for (OrderLine line : lines) {
      table.row().cell(line.item()).cell(line.size()).cell(plain(line.net())).cell(unit(line.unit())).cell(plain(100 * line.wasteShare()))
          .cell(plain(line.withWaste())).cell(plain(line.pack())).cell(Long.toString(line.order())).cell(line.orderUnit());
      content.priced().ifPresent(p -> price(p, line, table));
      table.cell(() -> sources(line, fo)).endRow();
    }
    table.close();
  }

  private static FoTable.Column words(String head, double share) {
    return FoTable.Column.words(head, share);
  }

  private static FoTable.Column number(String head, double share) {
    return FoTable.Column.number(head, share);
  }

  private static String plain(double value) {
    return MeasureFormat.plain(value, PLACES);
  }

  private static String unit(String unit) {
    return unit.equals("m2") ? "m²" : unit;
  }

  private static void price(PricedOrder priced, OrderLine line, FoTable table) {
    Optional<CostedLine> cost = priced.cost(line.id());
    table.cell(cost.map(c -> c.price().toPlainString() + " / " + unit(c.unit())).orElse("no price"));
    table.cell(cost.map(c -> c.cost().toPlainString()).orElse(""));
  }

  private void sources(OrderLine line, FoWriter fo) {
    List<String> junctions = line.junctions();
    if (junctions.isEmpty()) {
      fo.text(line.faces().size() > NAMED ? CountText.of(line.faces().size(), "face") : String.join(" ", line.faces()));
    } else if (junctions.size() > NAMED) {
      fo.text(CountText.of(junctions.size(), "place"));
    } else {
      content.places(junctions, fo);
    }
  }

  private void costs(PricedOrder priced, FoWriter fo) {
    FoHeadings.head(fo, SubmittalContent.place(PageSet.ORDER) + "-costs", "Costs");
    FoHeadings.labelled(fo, "Total", priced.total().toPlainString() + " " + priced.currency() + ", " + priced.hours().toPlainString()
        + " hours of labour");
    if (!priced.unpriced().isEmpty()) {
      FoHeadings.labelled(fo, "Without a price", String.join(", ", priced.unpriced()));
    }
    priced.remarks().forEach(r -> FoHeadings.labelled(fo, "Remark", r));
    FoHeadings.paragraph(fo, "Prices are those of the price list, on " + takeoff.system().name() + ".");
  }
}
