package org.seamledger.detail;

/**
 * A part of metal: what keeps the water out first.
 *
 * @param part its name in the trade, such as {@code ridge cap}; unique within a detail
 * @param id what it is to drawings, such as {@code cap}; unique within a detail
 * @param run {@link Run#CONTINUOUS} in stock lengths with laps, {@link Run#PER_PIECE} cut between seams, {@link Run#ONCE} made to measure
 * @param girthM width of the sheet it is bent from, metres; 0 where the roof system's value holds
 */
public record MetalPart(String part, String id, On on, Run run, double girthM) {

  /** A part whose id follows from its name. */
  public MetalPart(String part, On on, Run run, double girthM) {
    this(part, DerivedIds.part(part), on, run, girthM);
  }
}
