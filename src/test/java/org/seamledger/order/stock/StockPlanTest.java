package org.seamledger.order.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Cutting plans against every plan there is, where the pieces are few, and against published instances of bin packing. */
class StockPlanTest {

  private static long[] sizes(String text) {
    return Arrays.stream(text.trim().split("\\s+")).mapToLong(Long::parseLong).toArray();
  }

  private static void check(StockPlan plan, long[] sizes, long capacity) {
    assertThat(plan.bars().stream().flatMap(List::stream).sorted().toList())
        .isEqualTo(java.util.stream.IntStream.range(0, sizes.length).boxed().toList());
    assertThat(plan.bars()).allSatisfy(bar -> assertThat(bar.stream().mapToLong(i -> sizes[i]).sum()).isLessThanOrEqualTo(capacity));
    assertThat(plan.bars().size()).isGreaterThanOrEqualTo(plan.bound());
  }

  /** Tries every way to put each piece into an open bar or a new one. */
  private static int fewest(long[] sizes, int i, long[] free, int open, long capacity, int best) {
    if (open >= best || i == sizes.length) {
      return Math.min(open, best);
    }
    int least = best;
    for (int b = 0; b <= open; b++) {
      if (free[b] >= sizes[i]) {
        free[b] -= sizes[i];
        least = fewest(sizes, i + 1, free, Math.max(open, b + 1), capacity, least);
        free[b] += sizes[i];
      }
    }
    return least;
  }

  @Test
  void fewPiecesNeedAsFewBarsAsTheBestOfAllPlans() {
    long seed = Long.getLong("seamledger.seed", 20260101L);
    Random random = new Random(seed);
    for (int round = 0; round < 400; round++) {
      long capacity = 20 + random.nextInt(100);
      long[] sizes = random.longs(1 + random.nextInt(9), 1, capacity + 1).toArray();
      long[] free = new long[sizes.length + 1];
      Arrays.fill(free, capacity);
      int fewest = fewest(sizes, 0, free, 0, capacity, sizes.length);
      StockPlan plan = StockPlan.of(sizes, capacity);
      check(plan, sizes, capacity);
      String what =
          "seed " + seed + ", " + capacity + ": " + Arrays.stream(sizes).mapToObj(Long::toString).collect(Collectors.joining(" "));
      assertThat(plan.bars().size()).as(what).isEqualTo(fewest);
      assertThat(plan.bound()).as(what).isLessThanOrEqualTo(fewest);
    }
  }

  @Test
  void manyPiecesStayNearTheBound() {
    Random random = new Random(7);
    for (int round = 0; round < 10; round++) {
      long[] sizes = random.longs(500, 300, 3000).toArray();
      StockPlan plan = StockPlan.of(sizes, 3048);
      check(plan, sizes, 3048);
      assertThat(plan.bars().size()).isLessThanOrEqualTo((int) Math.ceil(plan.bound() * 1.01) + 1);
    }
  }

  /** Instance N1C1W1_A of the OR-Library's bin packing sets: 50 items, capacity 100, optimum 25 = ceil(2434 / 100). */
  @Test
  void publishedUniformInstance() {
    long[] sizes =
        sizes("99 99 96 96 92 92 91 88 87 86 85 76 74 72 69 67 67 62 61 56 52 51 49 46 44 42 40 40 33 33 30 30 29 28 28 27 25 24 "
            + "23 22 21 20 17 14 13 11 10 7 7 3");
    StockPlan plan = StockPlan.of(sizes, 100);
    check(plan, sizes, 100);
    assertThat(plan.bars()).hasSize(25);
    assertThat(plan.bound()).isEqualTo(25);
  }

  /** Instance t60_00 (1997 set of triplets): 60 items in bins of 1000, optimum 20, where first and best fit need 23. */
  @Test
  void publishedTriplets() {
    long[] sizes = sizes("495 474 473 472 466 450 445 444 439 430 419 414 410 395 372 370 366 366 366 363 361 357 355 351 350 350 347 320 "
        + "315 307 303 299 298 298 292 288 287 283 275 275 274 273 273 272 272 271 269 269 268 263 262 261 259 258 255 254 252 252 252 "
        + "251");
    StockPlan plan = StockPlan.of(sizes, 1000);
    check(plan, sizes, 1000);
    assertThat(plan.bound()).isEqualTo(20);
    assertThat(plan.bars().size()).isBetween(20, 22);
  }

  /** Instance N1W1B1R0: 50 items, capacity 1000, optimum 18, the sum alone gives 17. */
  @Test
  void publishedHardInstance() {
    long[] sizes =
        sizes("395 394 394 391 390 389 388 384 383 382 380 379 376 371 368 365 360 360 354 350 346 346 344 342 340 335 335 333 330 "
            + "330 328 327 317 316 311 310 310 306 300 300 297 296 295 294 294 286 285 278 275 275");
    StockPlan plan = StockPlan.of(sizes, 1000);
    check(plan, sizes, 1000);
    assertThat(plan.bars().size()).isBetween(18, 19);
  }

  /**
   * Three of 1.0 m leave 0.048 m of 3.048 m. With a saw cut of 30 mm they need 3 · 1.03 = 3.09 m of 3.078 m: two lengths. A piece of 0.2 m
   * beside 2.8 m is cut from its offcut of 0.248 m, but not where offcuts below 0.305 m are scrap. By hand.
   */
  @Test
  void sawCutsAndScrapCount() {
    assertThat(StockPlan.of(List.of(1.0, 1.0, 1.0), 3.048, 0, 0).bars()).hasSize(1);
    assertThat(StockPlan.of(List.of(1.0, 1.0, 1.0), 3.048, 0, 0.03).bars()).hasSize(2);
    assertThat(StockPlan.of(List.of(2.8, 0.2), 3.048, 0, 0).bars()).hasSize(1);
    assertThat(StockPlan.of(List.of(2.8, 0.2), 3.048, 0.305, 0).bars()).hasSize(2);
  }

  @Test
  void aPieceThatFitsNoBarIsRefused() {
    assertThatThrownBy(() -> StockPlan.of(new long[] {5, 11}, 10)).isInstanceOf(IllegalArgumentException.class).hasMessageContaining("11");
    assertThat(StockPlan.of(new long[0], 10).bars()).isEmpty();
  }

  /**
   * Runs of 10 ft lengths with laps of 4 in, by hand: 40 ft need 480 + 4 · 4 = 496 in: four whole lengths and 16 in. 9 ft 8 in are one.
   * 19 ft 10 in need 238 + 2 · 4 = 246 in: two whole and 6 in, which takes 6 in from the length before it so that it can be worked with.
   */
  @Test
  void runsAreWholeLengthsAndARemainder() {
    double in = 0.0254;
    assertThat(inches(RunPieces.of(480 * in, 120 * in, 4 * in, 12 * in))).isEqualTo(List.of(120L, 120L, 120L, 120L, 16L));
    assertThat(inches(RunPieces.of(116 * in, 120 * in, 4 * in, 12 * in))).isEqualTo(List.of(116L));
    assertThat(inches(RunPieces.of(238 * in, 120 * in, 4 * in, 12 * in))).isEqualTo(List.of(120L, 114L, 12L));
    assertThat(RunPieces.of(0, 3, 0.1, 0.3)).isEmpty();
  }

  private static List<Long> inches(List<Double> lengths) {
    return lengths.stream().map(l -> Math.round(l / 0.0254)).toList();
  }
}
