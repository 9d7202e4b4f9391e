package org.seamledger.junction;

import java.util.List;

/**
 * What the model holds along a junction: flashings and gutters.
 *
 * @param pieces by GlobalId, each with the length of the line that it accompanies
 * @param flashingM length of the line with a flashing, metres, each part once
 * @param gutterM length of the line with a gutter, likewise
 */
public record Modelled(List<Piece> pieces, double flashingM, double gutterM) {

  public static final Modelled NOTHING = new Modelled(List.of(), 0, 0);

  public Modelled {
    pieces = List.copyOf(pieces);
  }

  /**
   * One element along a junction.
   *
   * @param element its GlobalId
   * @param gutter false for a flashing
   */
  public record Piece(String element, boolean gutter, double lengthM) {
  }
}
