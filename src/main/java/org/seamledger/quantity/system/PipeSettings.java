package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * Boots of round penetrations.
 *
 * @param fastenerCircleMargin from the pipe's surface to the fasteners of its boot
 * @param clearance least distance between the edges of two penetrations, and from one to a seam's neighbour line, for their flashings
 * @param plateLength least length along the slope of the plate where a pipe stands on a seam
 */
public record PipeSettings(@FieldName("boltCircleMargin") @Range(min = "1/4 in", max = "12 in") Measure fastenerCircleMargin,
    @Range(min = "0 in", max = "60 in") Measure clearance,
    @Range(min = "6 in", max = "60 in") Measure plateLength) {
}
