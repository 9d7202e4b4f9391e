package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;
import org.seamledger.quantity.physics.Metal;

/**
 * Fasteners and how far apart they stand.
 *
 * @param spacing greatest distance between fasteners through tape
 * @param endDistance of the first and the last from the ends of a piece or line
 * @param minimumPerPiece least number in a piece
 * @param trimSpacing greatest distance where a line is not sealed by tape: trims, cleats that only hold
 * @param wedgeSpacing greatest distance of wedges in a reglet
 * @param bootSpacing greatest distance on the ring of a pipe's boot
 * @param embedment how far a screw holds in the deck, or goes through it (common practice)
 * @param wallEmbedment how far an anchor holds in a wall; wedges are as long as the reglet is deep, 1 1/4 in (UFGS 07600)
 * @param backUpPlates whether a plate lies under the pan wherever something is fastened to the pan alone
 * @param box pieces in a unit of sale
 */
public record FastenerSettings(@Range(min = "1/2 in", max = "48 in") Measure spacing,
    @Range(min = "0 in", max = "12 in") Measure endDistance,
    int minimumPerPiece, @Range(min = "1/2 in", max = "96 in") Measure trimSpacing,
    @Range(min = "1/2 in", max = "96 in") Measure wedgeSpacing, @Range(min = "1/2 in", max = "12 in") Measure bootSpacing, Metal metal,
    @Range(min = "1/4 in", max = "6 in") Measure embedment, @Range(min = "1/2 in", max = "6 in") Measure wallEmbedment,
    boolean backUpPlates, int box) {
}
