package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;
import org.seamledger.quantity.formula.BeadShape;

/**
 * Beads of gun sealant.
 *
 * @param size diameter of a round bead, leg of a fillet, width of a half-round
 * @param upstand how far the bead behind a closure turns up each seam leg; where the file states nothing, the seam's height and one bead
 *     more, so that it joins the tape on the closure's top
 * @param receiverShape of the tooled bead where a flashing ends at a wall
 * @param clampShape of the bead at the clamp of a pipe's boot
 * @param cartridge content of a unit of sale
 */
public record BeadSettings(BeadShape shape, @Range(min = "1/32 in", max = "2 in") Measure size,
    @Range(min = "0 in", max = "12 in") Measure upstand, BeadShape receiverShape,
    @Range(min = "1/32 in", max = "2 in") Measure receiverSize, BeadShape clampShape,
    @Range(min = "1/32 in", max = "2 in") Measure clampSize, @Range(min = "10 ml", max = "20 l") Measure cartridge) {
}
