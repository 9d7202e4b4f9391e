package org.seamledger.detail;

import java.util.List;

/**
 * How a part is folded.
 *
 * @param name such as {@code valley pan}
 * @param part id of the metal part
 * @param section word of the section drawing in which the part is folded so; empty for all others
 * @param beside id of another part that the detail has where the part is folded so; empty for all others
 * @param legs from one edge to the other
 */
public record FoldingProfile(String name, String part, String section, String beside, List<Leg> legs) {

  public FoldingProfile {
    legs = List.copyOf(legs);
  }

  /** Where a bend's angle comes from. */
  public enum Bend implements Kind.Worded {
    /** As stated. */
    FIXED,
    /** The turn from one face to the other. */
    FACES,
    /** From the face up to a wall. */
    WALL,
    /** From a rib that stands up to the other face. */
    OTHER_FACE,
    /** From the face down to plumb. */
    PLUMB
  }

  /**
   * A leg and the bend after it.
   *
   * @param lengthM as stated, or 0
   * @param size which of the system's sizes it has, or empty
   * @param share of what the girth leaves after all other legs; 0 for a leg of its own length
   * @param bendDegrees where the bend is fixed
   */
  public record Leg(String name, double lengthM, String size, double share, Bend bend, double bendDegrees) {
  }
}
