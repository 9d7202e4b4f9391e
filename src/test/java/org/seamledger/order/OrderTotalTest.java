package org.seamledger.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.progress.Progress;
import org.seamledger.samples.OrderSumsTest;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** One order for many takeoffs, against the orders of each. */
class OrderTotalTest {

  private static final List<Takeoff> TAKEOFFS = new ArrayList<>();
  private static final List<List<OrderAmount>> AMOUNTS = new ArrayList<>();

  @BeforeAll
  static void analyse() throws IOException {
    for (Path model : OrderSumsTest.samples()) {
      Takeoff takeoff = Analysis.run(Inputs.ofFiles(List.of(model)), Progress.NONE);
      TAKEOFFS.add(takeoff);
      AMOUNTS.add(OrderAmount.of(takeoff));
    }
  }

  private static OrderList total(List<List<OrderAmount>> all) {
    OrderTotal total = new OrderTotal();
    all.forEach(total::add);
    return total.list();
  }

  private static Map<String, OrderLine> byId(OrderList order) {
    return order.lines().stream().collect(Collectors.toMap(OrderLine::id, Function.identity()));
  }

  @Test
  void ofOneTakeoffIsItsOrder() {
    for (int i = 0; i < TAKEOFFS.size(); i++) {
      Map<String, OrderLine> total = byId(total(List.of(AMOUNTS.get(i))));
      double panels = 0;
      for (OrderLine own : OrderList.of(TAKEOFFS.get(i)).lines()) {
        if (own.group() == OrderGroup.PANELS) {
          panels += own.order();
          continue;
        }
        OrderLine line = total.get(own.id());
        assertThat(line.order()).as("%s of %s", own.id(), TAKEOFFS.get(i).models().get(0).file()).isEqualTo(own.order());
        assertThat(line.net()).isEqualTo(own.net(), within(1e-8));
        assertThat(line.withWaste()).isEqualTo(own.withWaste(), within(1e-8));
        assertThat(line.measures().keySet()).isEqualTo(own.measures().keySet());
      }
      assertThat(panels).isEqualTo(total.containsKey("panel") ? total.get("panel").order() : 0);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void neitherOrderNorGroupingChangesIt(long seed) {
    Random random = new Random(seed);
    List<List<OrderAmount>> shuffled = new ArrayList<>(AMOUNTS);
    Collections.shuffle(shuffled, random);
    OrderTotal whole = new OrderTotal();
    for (int i = 0; i < shuffled.size();) {
      Map<ProductKey, OrderAmount> part = new TreeMap<>();
      for (int n = 1 + random.nextInt(4); n > 0 && i < shuffled.size(); n--, i++) {
        shuffled.get(i).forEach(a -> part.merge(a.product(), a, OrderAmount::plus));
      }
      whole.add(part.values());
    }
    assertThat(whole.list()).isEqualTo(total(AMOUNTS));
  }

  /** Rolls of tape by a plain decimal sum over the junctions of all models: 10 % waste, rolls of 50 ft (domain's default roof system). */
  @Test
  void tapeIsRoundedUpOnce() {
    BigDecimal sum = BigDecimal.ZERO;
    long each = 0;
    for (Takeoff takeoff : TAKEOFFS) {
      sum = sum.add(BigDecimal.valueOf(takeoff.quantities().project().tape().netM()));
      each += takeoff.quantities().project().tape().rolls();
    }
    OrderLine tape = byId(total(AMOUNTS)).get("tape");
    assertThat(tape.order())
        .isEqualTo(sum.multiply(new BigDecimal("1.1")).divide(new BigDecimal("15.24"), 0, RoundingMode.CEILING).longValue());
    assertThat(tape.order()).isLessThan(each);
  }

  /** Each building's trims are cut from stock by themselves: the lengths add up. */
  @Test
  void stockLengthsAddUp() {
    Map<ProductKey, Long> lengths = new TreeMap<>();
    for (Takeoff takeoff : TAKEOFFS) {
      // A gutter is in the cut list, but bought with the drainage.
      TrimLines.plans(takeoff).stream().filter(p -> !p.part().equals("gutter"))
          .forEach(p -> lengths.merge(ProductKey.of("trim:" + p.part(), p.girthM()), (long) p.bars().size(), Long::sum));
    }
    double waste = TAKEOFFS.get(0).system().waste().flashing().value();
    Map<ProductKey, Long> ordered = total(AMOUNTS).lines().stream().filter(l -> l.group() == OrderGroup.TRIMS)
        .collect(Collectors.toMap(OrderLine::product, OrderLine::order, Long::sum, TreeMap::new));
    lengths.replaceAll((k, n) -> (long) Math.ceil(n * (1 + waste) - 1e-9));
    assertThat(ordered).isEqualTo(lengths);
  }

  @Test
  void idsAreUniqueAndSortedByGroup() {
    List<OrderLine> lines = total(AMOUNTS).lines();
    Set<String> ids = new HashSet<>();
    assertThat(lines).allMatch(l -> ids.add(l.id()));
    assertThat(lines.stream().map(OrderLine::group)).isSorted();
    assertThat(ids).contains("panel", "clip", "tape", "underlayment");
  }

  private static OrderAmount tape(long nano, double pack) {
    return new OrderAmount(new ProductKey("tape", 0), OrderGroup.SEALANTS, "sealing tape", "", "m", 0.1, pack, "roll",
        BigInteger.valueOf(nano),
        BigInteger.valueOf(nano), 0, new TreeMap<>(), 1);
  }

  /** A million roofs of 10 km of tape each are more nanometres than a long holds. */
  @Test
  void sumsMayBeOfAnySize() {
    OrderAmount sum = tape(10_000_000_000_000L, 15.24);
    for (int i = 0; i < 20; i++) {
      sum = sum.plus(sum);
    }
    BigDecimal metres = new BigDecimal(10_000).multiply(BigDecimal.valueOf(1 << 20));
    assertThat(sum.line("tape").order())
        .isEqualTo(metres.multiply(new BigDecimal("1.1")).divide(new BigDecimal("15.24"), 0, RoundingMode.CEILING).longValue());
  }

  /** Sixty rolls to the last nanometre are sixty, and a millimetre more is another. */
  @Test
  void whatFillsPacksExactlyTakesNoMore() {
    OrderAmount sixty = tape(831_272_727_273L, 15.24);
    assertThat(sixty.line("tape").order()).isEqualTo(60);
    assertThat(sixty.plus(tape(1_000_000, 15.24)).line("tape").order()).isEqualTo(61);
  }

  @Test
  void otherPacksAreNotAdded() {
    OrderAmount one = tape(1, 15.24);
    assertThatThrownBy(() -> one.plus(tape(1, 10))).isInstanceOf(IllegalArgumentException.class).hasMessageContaining("15.24");
  }
}
