package org.seamledger.order;

import java.util.List;
import org.seamledger.order.stock.StockPlan;

/**
 * How the pieces of one trim are cut from stock lengths.
 *
 * @param part its name
 * @param girthM width of its sheet
 * @param pieces of all its runs
 * @param plan bar by bar, by positions in {@code pieces}
 */
public record TrimPlan(String part, double girthM, List<Piece> pieces, StockPlan plan) {

  public TrimPlan {
    pieces = List.copyOf(pieces);
  }

  /** A piece as cut, metres, and the junction and face that it is for. */
  public record Piece(String junction, String face, double lengthM) {
  }

  /** Which pieces come from which stock length, by positions in {@code pieces}. */
  public List<List<Integer>> bars() {
    return plan.bars();
  }

  /** Length of all pieces, laps included, metres. */
  public double sheetM() {
    return pieces.stream().mapToDouble(Piece::lengthM).sum();
  }
}
