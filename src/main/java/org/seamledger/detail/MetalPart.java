package org.seamledger.detail;

/**
 * A part of metal: what keeps the water out first.
 *
 * @param part its name in the trade, such as {@code ridge cap}; unique within a detail
 * @param id what it is to drawings, such as {@code cap}; unique within a detail
 * @param run {@link Run#CONTINUOUS} in stock lengths with laps, {@link Run#PER_PIECE} cut between seams, {@link Run#ONCE} made to measure
 * @param girthM width of the sheet it is bent from, metres; 0 where the roof system's value holds
 * @param lapM least lap of its lengths, metres; 0 where the roof system's value holds
 * @param everyM length of the intervals that it is counted by, metres; 0 for what isn't, and where the system's spacing of outlets holds
 * @param where the fact of the system or the line that asks for it, such as {@code backUpPlates}; empty where the detail always has it
 */
public record MetalPart(String part, String id, On on, Run run, double girthM, double lapM, double everyM, String where) {

  /** A part whose id follows from its name. */
  public MetalPart(String part, On on, Run run, double girthM) {
    this(part, DerivedIds.part(part), on, run, girthM, 0, 0, "");
  }

  /** The same under another id. */
  MetalPart called(String other) {
    return new MetalPart(part, other, on, run, girthM, lapM, everyM, where);
  }
}
