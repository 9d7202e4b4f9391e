package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * Hung gutters along eaves: counted, not sized.
 *
 * @param hung whether eaves have them
 * @param outletSpacing greatest length that one outlet serves (common practice: 40 ft)
 * @param hangerSpacing greatest distance of hangers (common practice: 30 in)
 */
public record GutterSettings(boolean hung, @Range(min = "3 ft", max = "200 ft") Measure outletSpacing,
    @Range(min = "6 in", max = "60 in") Measure hangerSpacing) {
}
