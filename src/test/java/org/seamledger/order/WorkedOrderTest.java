package org.seamledger.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.progress.Progress;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.SealLine;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/**
 * Worked examples E14 to E24, from an IFC model to the order: every expected figure was derived by hand, the arithmetic stands beside it.
 * The default system: pans of 16 in, stock of 10 ft lapped 4 in, hem, overhang and setback 1 in, coil 4 in wider than the coverage, clips
 * at 24 in in the field and at 12 in in edges and corners.
 */
class WorkedOrderTest {

  @TempDir
  Path folder;

  private static final double IN = 0.0254;
  private static final double FT = 0.3048;
  /** 24 ft wide at 6:12: a run of 12 ft, slope length 12 ft · √1.25 = 160.997 in. */
  private static final double SLOPE_IN = 144 * Math.sqrt(1.25);

  private static Takeoff takeoff(String sample) {
    return Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples", sample))), Progress.NONE);
  }

  /** Under a system with these values, in JSON with single quotes. */
  private Takeoff takeoff(String sample, String system) {
    try {
      Path file = Files.writeString(folder.resolve("system.json"), system.replace('\'', '"'));
      return Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples", sample))).withSystem(Optional.of(file)), Progress.NONE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static OrderLine line(OrderList order, String id) {
    return order.lines().stream().filter(l -> l.id().equals(id)).findFirst().orElseThrow(() -> new AssertionError("no line " + id));
  }

  private static double panels(OrderList order, String measure) {
    return order.lines().stream().filter(l -> l.group() == OrderGroup.PANELS).mapToDouble(l -> l.measures().get(measure)).sum();
  }

  /** E14, panels of the gable of 40 by 24 ft: 480 / 16 = 30 a side, blanks of 160.997 + 1 + 1 − 1 = 161.997 in from coil of 20 in. */
  @Test
  void panelsOfTheGable() {
    OrderList order = OrderList.of(takeoff("worked/ridge-40ft.ifc"));
    assertThat(panels(order, "piece")).isEqualTo(60);
    assertThat(panels(order, "m")).isCloseTo(60 * (SLOPE_IN + 1) * IN, within(1e-3));
    assertThat(panels(order, "m2")).isCloseTo(60 * (SLOPE_IN + 1) * 20 * IN * IN, within(1e-3));
    // 0.024 in of steel at 7850 kg/m³: 4.7854 kg/m² on 125.42 m².
    assertThat(panels(order, "kg")).isCloseTo(125.417 * 4.78536, within(0.02));
  }

  /**
   * E15, clips of the gable. Zones: 0.1 · 24 ft = 2.4 ft, at least 3 ft; 3 ft in plan are 3·√1.25 = 3.354 ft of slope, which leaves
   * 13.416 − 2 · 3.354 = 6.708 ft between eave and ridge strips. Seams at 16, 32 … 464 in: 2 at each rake stand within 36 in of it. Each
   * of those 4 a side: 4 + 7 + 4 at 12 in, and one at the low end, 16; each of the 25 others: 4 + (6.708 / 2 → 4) + 4 + 1 = 13. (4 · 16 +
   * 25 · 13) · 2 = 778, two screws each; + 10 %: 855.8, 9 boxes of 100.
   */
  @Test
  void clipsOfTheGable() {
    OrderList order = OrderList.of(takeoff("worked/ridge-40ft.ifc"));
    assertThat(line(order, "clip").net()).isEqualTo(778);
    assertThat(line(order, "clip").order()).isEqualTo(9);
    assertThat(line(order, "fastener:clip-screw").net()).isEqualTo(1556);
    // 1556 · 1.1 = 1711.6 in boxes of 250.
    assertThat(line(order, "fastener:clip-screw").order()).isEqualTo(7);
  }

  /**
   * E16, stock lengths of the gable. Ridge cap: 480 + 4 · 4 = 496 in, four whole lengths and 16 in: 5. Gable trim: each rake of 161 in is
   * 120 + 45 in; four whole ones, and of the four of 45 in two come from one length: 6, where rounding up line by line buys 8. Eave trim:
   * each of two eaves is 4 · 120 + 16 in, both of 16 in from one: 9, not 10. Underlayment: 1073.31 ft², rolls of 36 in × 66 2/3 ft cover
   * 33 in × 66 1/6 ft = 181.958 ft² of their 200: 5.90, 6. Tape: 160 (ridge) + 80 (eaves) + 53.666 (rakes) = 293.666 ft, + 10 % = 323.03,
   * 7 rolls of 50.
   */
  @Test
  void stockOfTheGable() {
    OrderList order = OrderList.of(takeoff("worked/ridge-40ft.ifc"));
    assertThat(line(order, "trim:ridge cap").order()).isEqualTo(5);
    assertThat(line(order, "trim:ridge cap").withWaste()).isCloseTo(496 * IN, within(1e-4));
    assertThat(line(order, "trim:gable trim").order()).isEqualTo(6);
    assertThat(line(order, "trim:eave trim").order()).isEqualTo(9);
    assertThat(line(order, "trim:eave trim").net()).isCloseTo(80 * FT, within(1e-4));
    assertThat(line(order, "underlayment").net()).isCloseTo(1073.31 * FT * FT, within(2e-3));
    assertThat(line(order, "underlayment").order()).isEqualTo(6);
    assertThat(line(order, "tape").order()).isEqualTo(7);
    assertThat(line(order, "closure").net()).isEqualTo(60);
  }

  /**
   * E17, cost of the gable: tape 7 · 18.50 = 129.50; every trim by the length 22.25: 6 + 6 (zee) + 6 (rake cleat) + 9 + 9 (eave
   * cleat) + 5 = 41, 912.25; panels 4.10 a foot of blank: 60 · 161.9969 in = 809.984 ft, 404.992 ft a side, 1660.47 each; closures 1.15 ·
   * 60 = 69.00; underlayment 0.90 a ft² of whole rolls: 6 · 200 = 1200, 1080.00. Together 5511.69; labour 0.02 h a foot of panel: 8.10 h
   * a side.
   */
  @Test
  void costOfTheGable() {
    OrderList order = OrderList.of(takeoff("worked/ridge-40ft.ifc"));
    PriceList prices = PriceList.parse("""
        id,unit,price,labour hours,currency,note
        tape,roll,18.50,,USD,
        trim:*,length,22.25,,USD,all profiles
        panel:*,ft,4.10,0.02,USD,
        closure,piece,1.15,,USD,
        underlayment,ft2,0.90,,USD,
        """, "prices.csv");
    PricedOrder priced = PricedOrder.of(order, prices);
    assertThat(priced.cost("tape").orElseThrow().cost()).isEqualByComparingTo("129.50");
    assertThat(priced.cost("panel:F1").orElseThrow().cost()).isEqualByComparingTo("1660.47");
    assertThat(priced.cost("panel:F1").orElseThrow().hours()).isEqualByComparingTo("8.10");
    assertThat(priced.cost("underlayment").orElseThrow().cost()).isEqualByComparingTo("1080.00");
    assertThat(order.lines().stream().filter(l -> l.group() == OrderGroup.TRIMS).mapToLong(OrderLine::order).sum()).isEqualTo(41);
    assertThat(priced.total()).isEqualByComparingTo(new BigDecimal("5511.69"));
    assertThat(priced.unpriced()).contains("clip", "bead-concealed", "fastener:deck-screw").doesNotContain("tape");
    assertThat(priced.remarks()).isEmpty();
  }

  /**
   * E18, the hip roof of 40 by 24 ft, all 6:12. End faces: 18 pans, pairs whose long edges are 16 i · √1.25 in, i = 1 … 9: 2 · (17.8885 ·
   * 45 + 9 · 1) = 1627.97 in of blanks. Side faces: those 18, and 12 under the ridge of 16 ft: + 12 · 161.997 in. Hip caps: each of 216
   * in is 120 + 100 in, no two remainders in one length: 8. Ridge cap: 192 + 4 = 120 + 76: 2. Eaves 40 and 24 ft twice: 496 = 4 · 120 +
   * 16, 288 + 8 = 2 · 120 + 56; the two of 16 in and the two of 56 in are 144 in, two lengths: 12 + 2 = 14.
   */
  @Test
  void hipRoof() {
    OrderList order = OrderList.of(takeoff("worked/hip-roof.ifc"));
    double ends = 2 * (16 * Math.sqrt(1.25) * 45 + 9);
    assertThat(panels(order, "piece")).isEqualTo(96);
    assertThat(panels(order, "m") / IN).isCloseTo(4 * ends + 2 * 12 * (SLOPE_IN + 1), within(0.1));
    assertThat(line(order, "trim:hip cap").order()).isEqualTo(8);
    assertThat(line(order, "trim:ridge cap").order()).isEqualTo(2);
    assertThat(line(order, "trim:eave trim").order()).isEqualTo(14);
    assertThat(order.lines()).as("nobody asked for gutters").noneMatch(l -> l.id().startsWith("gutter"));
    OrderList guttered = OrderList.of(takeoff("worked/hip-roof.ifc", "{'eaves': {'gutters': true}}"));
    assertThat(line(guttered, "gutter-corner").net()).isEqualTo(4);
    assertThat(guttered.lines()).noneMatch(l -> l.id().equals("gutter-end"));
  }

  /**
   * E19, of the school. Ridge cap: runs of 29.4, 13.4, 11, 11, 10.393, 2.687 and 2.687 m in lengths of 3.048 m lapped 0.1016 m are 10, 5,
   * 4, 4, 4, 1 and 1 pieces; the cut ones of 2.882, 1.614, 2.161, 2.161, 1.554, 2.687 and 2.687 m go one to a length, for 1.554 + 1.614
   * is more than 3.048: 29. The plate of a pipe of 110 mm is 16 by 18 in: its boot's circle is 110 + 2 · 34.9 = 179.9 mm, 4 in more all
   * round 383 mm. Chimney 1000 mm wide at 35°: cricket 500 mm · tan 35° = 350 mm high, planes of 0.5 · √(0.5² + 0.35²) = 0.3052 m². The two
   * skylights 800 mm wide get none: International Residential Code R903.2.2 excepts unit skylights.
   */
  @Test
  void school() {
    OrderList order = OrderList.of(takeoff("school.ifc"));
    assertThat(line(order, "trim:ridge cap").order()).isEqualTo(29);
    assertThat(line(order, "plate:406x457").net()).isEqualTo(2);
    assertThat(line(order, "cricket:1000x350").net()).isEqualTo(1);
    assertThat(line(order, "cricket:1000x350").measures().get("m2")).isCloseTo(0.3052, within(1e-3));
    assertThat(order.lines()).noneMatch(l -> l.id().equals("cricket:800x280"));
    assertThat(line(order, "boot:110").net() + line(order, "boot:160").net()).isEqualTo(5);
    assertThat(order.lines().stream().map(OrderLine::id)).doesNotHaveDuplicates();
  }

  /**
   * E20, gutters of the gable. Each eave drains 40 · 12 = 480 ft² in plan; at 9.6 in/h 480 · 0.8 / 3600 = 0.1067 ft³/s, 3.02 l/s. A box of
   * 5 by 3 3/4 in: A = 0.13021 ft², R = 18.75 / 12.5 = 1.5 in = 0.125 ft, Manning 1.486 / 0.012 · 0.13021 · 0.25 · √(1/192) = 0.291 ft³/s:
   * enough. At 40 in/h 480 · 3.3333 / 3600 = 0.444 ft³/s is not; 6 by 4 1/2 in: A = 0.1875 ft², R = 1.8 in = 0.15 ft, 0.15^(2/3) = 0.2823,
   * 0.473 ft³/s. Leaders (National Standard Plumbing Code 2006, table 13.6.1: 3 in 67, 4 in 144, 5 in 261 gallons a minute): 0.1067 ft³/s
   * are 47.9, 0.444 are 199.5. One outlet for each 40 ft: 2; at 25 ft two an eave: 4. Stock: 480 / 120 = 4 a side. Hangers: (480 − 2) / 30
   * = 15.9, 16 + 1 = 17 an eave, two screws each. Two ends a gutter.
   */
  @Test
  void guttersOfTheGable() {
    OrderList order = OrderList.of(takeoff("worked/ridge-40ft.ifc", "{'eaves': {'gutters': true}}"));
    assertThat(line(order, "gutter").size()).startsWith("at least 127 mm (5 in) wide");
    assertThat(line(order, "gutter").order()).isEqualTo(8);
    assertThat(line(order, "gutter").steps().toString()).contains("3.02 l/s");
    assertThat(line(order, "gutter-outlet").net()).isEqualTo(2);
    assertThat(line(order, "gutter-outlet").size()).isEqualTo("leader 76 mm (3 in)");
    assertThat(line(order, "gutter-hanger").net()).isEqualTo(34);
    assertThat(line(order, "gutter-end").net()).isEqualTo(4);
    assertThat(order.lines().stream().flatMap(l -> l.steps().stream())).anyMatch(s -> s.contains("68 gutter brackets, metal-deck"));
    OrderList wet = OrderList.of(takeoff("worked/ridge-40ft.ifc",
        "{'eaves': {'gutters': true}, 'site': {'fiveMinuteRainfall': '40 in/h'}}"));
    assertThat(line(wet, "gutter").size()).startsWith("at least 152 mm (6 in) wide");
    assertThat(line(wet, "gutter-outlet").size()).isEqualTo("leader 127 mm (5 in)");
    OrderList close = OrderList.of(takeoff("worked/ridge-40ft.ifc",
        "{'eaves': {'gutters': true}, 'purchase': {'gutters': {'outletSpacing': '25 ft'}}}"));
    assertThat(line(close, "gutter-outlet").net()).isEqualTo(4);
  }

  /** E21, snow guards of the gable: 160.997 in of slope under 10 ft a row are 2 rows; 480 / 16 = 30 a row: 60 an eave. 20 ft a row: one. */
  @Test
  void snowGuardsOfTheGable() {
    assertThat(OrderList.of(takeoff("worked/ridge-40ft.ifc")).lines()).noneMatch(l -> l.id().equals("snow-guard"));
    OrderLine two = line(OrderList.of(takeoff("worked/ridge-40ft.ifc",
        "{'purchase': {'snowGuards': {'ordered': true, 'slopePerRow': '10 ft'}}}")), "snow-guard");
    assertThat(two.net()).isEqualTo(120);
    assertThat(two.shares()).hasSize(2).allMatch(s -> s.amount() == 60);
    assertThat(two.steps().toString()).contains("2 rows of 30 = 60");
    OrderLine one = line(OrderList.of(takeoff("worked/ridge-40ft.ifc", "{'purchase': {'snowGuards': {'ordered': true}}}")), "snow-guard");
    assertThat(one.net()).isEqualTo(60);
  }

  /**
   * E22, cricket behind the gatehouse's chimney: 800 mm wide at 1:2, so 200 mm high; its ridge 400 mm, its valleys √(2 · 400² + 200²) = 600
   * mm each: 1.6 m of seams. Bead of 1/4 in: 1600 · π/4 · 6.35² = 50 671 mm³. Rivets: (1600 − 50.8) / 101.6 = 15.2, 16 + 1 = 17.
   */
  @Test
  void seamsOfACricket() {
    Takeoff takeoff = takeoff("gatehouse.ifc");
    JunctionQuantities behind = takeoff.quantities().byJunction().values().stream()
        .filter(q -> q.metal().stream().anyMatch(m -> m.part().equals("cricket"))).findFirst().orElseThrow();
    SealLine folds = behind.seals().stream().filter(s -> s.place().contains("folds of the cricket")).findFirst().orElseThrow();
    assertThat(folds.lengthM()).isCloseTo(1.6, within(1e-6));
    assertThat(folds.volumeM3() * 1e9).isCloseTo(50671, within(1.0));
    assertThat(behind.fasteners().stream().filter(f -> f.id().equals("cricket-seams")).mapToInt(FastenerRow::count).sum()).isEqualTo(17);
    assertThat(OrderList.of(takeoff).lines().stream().filter(l -> l.id().startsWith("fastener:rivet")).flatMap(l -> l.steps().stream()))
        .anyMatch(s -> s.contains("17 seams of the cricket, metal-metal"));
  }

  /**
   * E23, vented ridge of the gable: 30 pans a side, 60 closures, each 16 in − 5 layers of 0.024 in = 15.88 in. Slots of 1 in on both sides
   * of 40 ft: 6.67 ft² = 0.62 m²; 1/300 of 960 ft², half of it at the ridge, is 1.6 ft² = 0.15 m² (International Residential Code R806.2).
   */
  @Test
  void ventedRidgeOfTheGable() {
    OrderList order = OrderList.of(takeoff("worked/ridge-40ft.ifc", "{'ridge': {'vented': true}}"));
    OrderLine vented = line(order, "closure-vented");
    assertThat(vented.net()).isEqualTo(60);
    assertThat(vented.measures().get("m")).isCloseTo(60 * 15.88 * IN, within(1e-3));
    assertThat(vented.steps().get(0)).contains("open 0.62 m²").contains("asks for 0.15 m²");
    assertThat(order.lines()).noneMatch(l -> l.id().equals("closure"));
  }

  /**
   * E24, concealed beads of the gable: 2 · 960 in behind 60 closures and 2 · 1 3/4 in up the ends of each, 2130 in, and 0.45 m at each end
   * plate of the ridge: 55.002 m of 1/4 in round, 31.669 mm² each, 1741.9 ml; + 10 % = 1916.06 ml. Cartridges of 10.1 fl oz (298.69 ml):
   * 6.4; foil packs of 20 fl oz (591.47 ml): 3.2; pails of 5 gal (18 927 ml): 0.1.
   */
  @ParameterizedTest
  @CsvSource({"cartridge, 7, 298.69, cartridge of 10.1 fl oz", "sausage, 4, 591.47, sausage of 20 fl oz",
      "pail, 1, 18927.06, pail of 5 gal"})
  void packsOfSealant(String pack, long order, double content, String size) {
    OrderList list = OrderList.of(takeoff("worked/ridge-40ft.ifc", "{'purchase': {'packs': {'sealant': '" + pack + "'}}}"));
    OrderLine line = line(list, "bead-concealed");
    assertThat(line.withWaste()).isCloseTo((2130 * IN + 0.9) * Math.PI / 4 * 6.35e-3 * 6.35e-3 * 1e6 * 1.1, within(0.01));
    assertThat(line.pack()).isCloseTo(content, within(0.01));
    assertThat(line.order()).isEqualTo(order);
    assertThat(line.orderUnit()).isEqualTo(pack);
    assertThat(line.size()).isEqualTo(size);
  }

  /** Cleats that hold the edges of pans are formed metal, whatever junction they stand at. */
  @Test
  void cleatsAreNoPenetrations() {
    OrderList order = OrderList.of(takeoff("school.ifc"));
    assertThat(line(order, "pan-cleat").group()).isEqualTo(OrderGroup.CORNERS);
    assertThat(order.lines().stream().filter(l -> l.group() == OrderGroup.PENETRATIONS).map(l -> l.id().split(":")[0]))
        .isSubsetOf("boot", "clamp", "plate", "cricket", "curb");
  }
}
