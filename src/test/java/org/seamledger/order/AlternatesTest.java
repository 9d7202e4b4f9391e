package org.seamledger.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** Alternates side by side, and the order divided by where it comes from, on the school. */
class AlternatesTest {

  private static final PriceList PRICES =
      PriceList.parse("id,unit,price\ntape,roll,18.37\ntrim:*,length,22.21\npanel:*,m2,31.17\n", "p.csv");
  private static Takeoff school;
  private static OrderList order;
  private static PricedOrder priced;

  @BeforeAll
  static void analyse() {
    school = Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples/school.ifc"))), Progress.NONE);
    order = OrderList.of(school);
    priced = PricedOrder.of(order, PRICES);
  }

  @Test
  void aRoofIsTheSameAsItself() {
    Alternate once = Alternate.of("one", school, Optional.of(PRICES));
    AlternateComparison c = AlternateComparison.of(List.of(once, Alternate.of("two", school, Optional.of(PRICES))));
    assertThat(c.lines()).hasSameSizeAs(order.lines());
    assertThat(c.findings().keySet()).isNotEmpty().allSatisfy(f -> assertThat(c.change(f, c.alternates().get(1))).isEqualTo("stays"));
  }

  /** The same school in metric: pans of 430 mm instead of 406.4 mm make fewer panels and clips; trims of 3 m more lengths. */
  @Test
  void otherPansMakeOtherAmounts() {
    Takeoff metric = Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples/school.ifc")))
        .withSystem(Optional.of(Path.of("ifc-samples/roof-system-metric.json"))), Progress.NONE);
    Alternate first = Alternate.of("inches", school, Optional.empty());
    Alternate second = Alternate.of("metric", metric, Optional.empty());
    assertThat(second.line("panel:F2").orElseThrow().net()).isLessThan(first.line("panel:F2").orElseThrow().net());
    assertThat(second.line("clip").orElseThrow().net()).isLessThan(first.line("clip").orElseThrow().net());
    AlternateComparison c = AlternateComparison.of(List.of(first, second));
    assertThat(c.lines().stream().map(OrderLine::id)).doesNotHaveDuplicates().contains("panel:F2", "tape", "trim:ridge cap");
  }

  @Test
  void partsThatBelongToOneKeyAddUpToTheOrder() {
    for (Subtotals.By by : List.of(Subtotals.By.KIND, Subtotals.By.FAMILY, Subtotals.By.DETAIL, Subtotals.By.JUNCTION)) {
      assertThat(by.isShared()).isFalse();
      Map<String, Double> nets = new TreeMap<>();
      Map<String, BigDecimal> costs = new TreeMap<>();
      for (Subtotals.Part p : Subtotals.of(school, order, Optional.of(priced), by)) {
        nets.merge(p.line().id(), p.net(), Double::sum);
        p.cost().ifPresent(c -> costs.merge(p.line().id(), c, BigDecimal::add));
      }
      assertThat(order.lines()).allSatisfy(l -> assertThat(nets.get(l.id())).as(l.id()).isCloseTo(l.net(), within(1e-6 * l.net())));
      assertThat(costs.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add)).isEqualByComparingTo(priced.total());
    }
  }

  /** A ridge belongs to both its faces: by face its cap counts twice, in the order once. A valley's pan likewise; a rake's trim once. */
  @Test
  void aSharedLineCountsForEachOfItsFaces() {
    List<Subtotals.Part> parts = Subtotals.of(school, order, Optional.of(priced), Subtotals.By.FACE);
    assertThat(Subtotals.By.FACE.isShared()).isTrue();
    for (String twice : List.of("trim:ridge cap", "trim:valley pan")) {
      double sum = parts.stream().filter(p -> p.line().id().equals(twice)).mapToDouble(Subtotals.Part::net).sum();
      assertThat(sum).as(twice).isCloseTo(2 * WorkedOrderTest.line(order, twice).net(), within(1e-6));
    }
    double once = parts.stream().filter(p -> p.line().id().equals("trim:gable trim")).mapToDouble(Subtotals.Part::net).sum();
    assertThat(once).isCloseTo(WorkedOrderTest.line(order, "trim:gable trim").net(), within(1e-6));
  }

  @Test
  void modelsAndStoreysAreNamed() {
    assertThat(Subtotals.of(school, order, Optional.empty(), Subtotals.By.MODEL)).extracting(Subtotals.Part::key)
        .containsOnly("school.ifc");
    assertThat(Subtotals.of(school, order, Optional.empty(), Subtotals.By.STOREY)).isNotEmpty();
  }
}
