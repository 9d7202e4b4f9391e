package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * Slopes at which the system works or needs more.
 *
 * @param sealSeamsBelow seams of flatter faces get a sealant in the seam
 * @param lowestSlope of the panel system, as its maker states it
 */
public record SlopeSettings(@Range(min = "0:12", max = "24:12") Measure sealSeamsBelow,
    @Range(min = "0:12", max = "12:12") Measure lowestSlope) {
}
