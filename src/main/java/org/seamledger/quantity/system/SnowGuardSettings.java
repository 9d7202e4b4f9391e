package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * Snow guards above eaves, counted to buy by: their load and layout are the maker's and the licensed engineer's.
 *
 * @param ordered whether they are bought
 * @param slopePerRow greatest length along the slope that one row holds (common practice, no source: 20 ft)
 * @param spacing greatest distance of guards in a row (common practice, no source: one at each seam)
 */
public record SnowGuardSettings(boolean ordered, @Range(min = "2 ft", max = "100 ft") Measure slopePerRow,
    @Range(min = "3 in", max = "10 ft") Measure spacing) {
}
