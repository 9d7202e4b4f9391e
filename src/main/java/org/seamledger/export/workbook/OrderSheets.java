package org.seamledger.export.workbook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dhatim.fastexcel.Workbook;
import org.seamledger.order.CostedLine;
import org.seamledger.order.OrderLine;
import org.seamledger.order.OrderList;
import org.seamledger.order.OrderShare;
import org.seamledger.order.PricedOrder;

/** The order, which calculates again when waste, a pack or a price is changed; and the places that each line comes from. */
final class OrderSheets {

  static final String ORDER = "Order";
  static final String PLACES = "Order by place";
  /** Beyond so many decimals a quotient's digits are noise; rounding up would make a pack of them. */
  private static final int DECIMALS = 9;
  private static final double LEAST = 1e-6;

  private final List<OrderLine> lines;
  private final Optional<PricedOrder> priced;
  private final Map<String, String> places;
  private final List<Share> shares = new ArrayList<>();
  private final Map<String, Integer> firstShare = new HashMap<>();

  private record Share(OrderLine line, OrderShare share) {
  }

  /** @param places where junctions and nodes stand in their sheets */
  OrderSheets(OrderList order, Optional<PricedOrder> priced, Map<String, String> places) {
    this.lines = order.lines();
    this.priced = priced;
    this.places = places;
    for (OrderLine line : lines) {
      firstShare.put(line.id(), SheetTable.row(shares.size()));
      line.shares().forEach(s -> shares.add(new Share(line, s)));
    }
  }

  void order(Workbook book) {
    List<Column<OrderLine>> columns = List.of(
        Column.text("Line", 20, l -> l.shares().isEmpty() ? l.id() : new Column.Link(l.id(), at(PLACES, firstShare.get(l.id())))),
        Column.text("Group", 13, l -> l.group().word()), Column.text("Item", 34, OrderLine::item), Column.text("Size", 40, OrderLine::size),
        Column.number("Net", Column.THREE, OrderLine::net), Column.text("Unit", 8, OrderLine::unit),
        Column.number("Laps", Column.THREE, OrderSheets::laps), Column.number("Waste, %", Column.TWO, l -> 100 * l.wasteShare()),
        Column.number("With waste", Column.THREE, l -> new Column.Formula("({Net}+{Laps})*(1+{Waste, %}/100)")),
        Column.number("Pack", Column.THREE, OrderLine::pack), Column.number("By cutting plan", Column.WHOLE, OrderSheets::planned),
        Column.number("Order", Column.WHOLE, l -> new Column.Formula("ROUNDUP(ROUND("
            + (planned(l) == null ? "{With waste}/{Pack}" : "{By cutting plan}*(1+{Waste, %}/100)") + "," + DECIMALS + "),0)")),
        Column.text("Order unit", 11, OrderLine::orderUnit),
        Column.number("Price", Column.TWO, l -> cost(l).map(CostedLine::price).orElse(null)),
        Column.text("Price for", 11, l -> cost(l).map(CostedLine::unit).orElse(l.orderUnit())),
        Column.number("Amount priced", Column.THREE, this::bought),
        Column.number("Cost", Column.TWO, l -> new Column.Formula("IF({Price}=\"\",\"no price\",ROUND({Price}*{Amount priced},2))")),
        Column.text("Arithmetic", 80, l -> String.join("; ", l.steps())));
    String currency = priced.map(PricedOrder::currency).filter(c -> !c.isEmpty()).map(c -> ", prices in " + c).orElse("");
    SheetTable<OrderLine> table = new SheetTable<>(book, ORDER, "Order",
        "Shaded cells may be changed: order and cost follow. A line without"
            + " a price counts as none, not as zero. Trims and gutters are bought as their cutting plan needs whole lengths" + currency
            + ".",
        columns);
    table.rows(lines, List.of("Cost"));
    table.inputs(lines.size(), "Waste, %", "Pack", "Price");
  }

  /** What laps add to the net amount before waste; empty where there are none. */
  private static Object laps(OrderLine line) {
    double laps = line.withWaste() / (1 + line.wasteShare()) - line.net();
    return laps > LEAST ? laps : null;
  }

  /**
   * Whole lengths that the cutting plan of a trim or gutter needs, before waste; empty for other lines. Waste of a share w on n lengths
   * gives the order n (1 + w), rounded up: as each length adds at least one, n is what is left of the order without waste, rounded down.
   */
  private static Object planned(OrderLine line) {
    return line.orderUnit().equals("length") ? Math.floor(line.order() / (1 + line.wasteShare()) + LEAST) : null;
  }

  private Optional<CostedLine> cost(OrderLine line) {
    return priced.flatMap(p -> p.cost(line.id()));
  }

  /** What the price is multiplied by: the order itself where it is for that unit; else as much more as is bought than the net amount. */
  private Object bought(OrderLine line) {
    Optional<CostedLine> cost = cost(line);
    if (cost.isEmpty() || cost.get().unit().equals(line.orderUnit())) {
      return new Column.Formula("{Order}");
    }
    double perPack = cost.get().amount().doubleValue() / line.order();
    return new Column.Formula(
        "ROUND({Order}*" + new java.math.BigDecimal(perPack).round(new java.math.MathContext(15)).toPlainString() + ",6)");
  }

  void places(Workbook book) {
    List<Column<Share>> columns = List.of(Column.text("Line", 20, s -> s.line().id()), Column.text("Item", 34, s -> s.line().item()),
        Column.text("Junction or node", 18, this::link), Column.text("Face", 8, s -> s.share().face()),
        Column.number("Net", Column.THREE, s -> s.share().amount()), Column.text("Unit", 8, s -> s.line().unit()));
    new SheetTable<>(book, PLACES, "What each line of the order comes from", "The amounts of a line add up to its net amount.", columns)
        .rows(shares, List.of());
  }

  private Object link(Share share) {
    String id = share.share().junction();
    return places.containsKey(id) ? new Column.Link(id, places.get(id)) : id;
  }

  /** A place in this workbook. */
  static String at(String sheet, int row) {
    return "'" + sheet + "'!A" + row;
  }
}
