package org.seamledger.order.stock;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.quantity.formula.LappedRun;

/** The pieces that a run of a trim is made of. */
public final class RunPieces {

  private RunPieces() {
  }

  /**
   * Whole stock lengths and one remainder, lapped: {@code L + (N − 1)·lap} of sheet altogether. A remainder shorter than the least piece
   * takes what it lacks from the length before it.
   *
   * @return from the longest to the shortest, metres; the run itself where it is no longer than a stock length
   */
  public static List<Double> of(double runM, double stockM, double lapM, double leastM) {
    LappedRun run = LappedRun.of(runM, stockM, lapM);
    List<Double> pieces = new ArrayList<>();
    for (int i = 1; i < run.pieces(); i++) {
      pieces.add(stockM);
    }
    if (run.pieces() > 0) {
      double rest = runM + run.laps() * (lapM - stockM);
      double least = Math.min(leastM, (stockM + rest) / 2);
      if (run.pieces() > 1 && rest < least) {
        pieces.set(pieces.size() - 1, stockM - (least - rest));
        rest = least;
      }
      pieces.add(rest);
    }
    return pieces;
  }
}
