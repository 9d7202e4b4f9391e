package org.seamledger.detail;

/**
 * Lines of fasteners.
 *
 * @param place what it fastens, such as {@code closure foot}; unique within a detail
 * @param id what it is to drawings, such as {@code closure}
 * @param lines parallel lines on each face (or along the line) that it is on
 * @param run {@link Run#CONTINUOUS} along the whole line, {@link Run#PER_PIECE} counted piece by piece
 * @param spacing which of the system's spacings holds: {@code fasteners.spacing}, {@code fasteners.trimSpacing},
 *     {@code fasteners.wedgeSpacing}, {@code fasteners.bootSpacing}
 * @param throughTape whether it presses a line of tape
 * @param joins what it joins where the panel is free
 * @param type of the fastener there
 * @param fixes whether it is here that a panel is fixed whose fixed line this is: there the same line goes through the panel into the deck
 * @param slides whether the holes of what lies on top are slots, because the panel moves under it
 * @param exposed whether its heads see the weather
 */
public record Fastening(String place, String id, int lines, On on, Run run, String spacing, boolean throughTape, Joins joins,
    FastenerType type, boolean fixes, boolean slides, boolean exposed) {

  /** Lines whose id follows from their place, and what they join from that. */
  public Fastening(String place, int lines, On on, Run run, String spacing, boolean throughTape) {
    this(place, DerivedIds.fastening(place), lines, on, run, spacing, throughTape, DerivedIds.joins(DerivedIds.fastening(place)),
        FastenerType.of(DerivedIds.joins(DerivedIds.fastening(place))), DerivedIds.fixes(DerivedIds.fastening(place)), false,
        false);
  }
}
