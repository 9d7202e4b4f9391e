package org.seamledger.order.stock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Which pieces are cut from which stock length: one-dimensional cutting stock with as few lengths as the search finds.
 *
 * <p>Pieces that fill a length are a length each. For the others two ways are tried, and the better is taken: best fit in descending order,
 * and least slack (length by length, the largest piece left with those others that leave the least of it: Gupta and Ho, A new heuristic
 * algorithm for the one-dimensional bin-packing problem, 1999; from memory). Where neither reaches the bound, an exact search goes on for
 * so many steps. {@code bound} is what no plan can beat: the second bound of Martello and Toth (Knapsack problems, 1990, chapter 8; from
 * memory).
 *
 * @param bars positions of pieces in the list given, bar by bar
 * @param bound least number of bars of any plan
 */
public record StockPlan(List<List<Integer>> bars, int bound) {

  private static final double STEP = 1e-5;

  public StockPlan {
    bars = bars.stream().map(List::copyOf).toList();
  }

  /**
   * @param piecesM lengths, none longer than a stock length
   * @param leastM a piece shorter than this takes as much, since an offcut so short is scrap
   * @param sawCutM lost between two pieces
   */
  public static StockPlan of(List<Double> piecesM, double stockM, double leastM, double sawCutM) {
    long saw = steps(sawCutM);
    long capacity = steps(stockM) + saw;
    long[] sizes = piecesM.stream().mapToLong(p -> Math.min(capacity, steps(Math.max(p, Math.min(leastM, stockM))) + saw)).toArray();
    return of(sizes, capacity);
  }

  private static long steps(double metres) {
    return Math.round(metres / STEP);
  }

  /** @throws IllegalArgumentException where a size is not from 1 to the capacity */
  public static StockPlan of(long[] sizes, long capacity) {
    for (long size : sizes) {
      if (size < 1 || size > capacity) {
        throw new IllegalArgumentException("a piece of " + size + " in a length of " + capacity);
      }
    }
    int[] order = IntStream.range(0, sizes.length).boxed()
        .sorted(Comparator.comparingLong((Integer i) -> -sizes[i]).thenComparing(Comparator.naturalOrder())).mapToInt(i -> i).toArray();
    long[] sorted = IntStream.of(order).mapToLong(i -> sizes[i]).toArray();
    int bound = StockBound.of(sorted, capacity);
    List<List<Integer>> best = BarSearch.best(sorted, capacity, bound);
    List<List<Integer>> bars = new ArrayList<>();
    best.forEach(bar -> bars.add(bar.stream().map(i -> order[i]).toList()));
    return new StockPlan(bars, bound);
  }
}
