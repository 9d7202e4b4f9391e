package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * What belongs to gutters; along which eaves they hang say {@link EaveSettings} and the model.
 *
 * @param outletSpacing greatest length that one outlet serves (common practice: 40 ft)
 * @param hangerSpacing greatest distance of hangers (common practice: 30 in)
 */
public record GutterSettings(@Range(min = "3 ft", max = "200 ft") Measure outletSpacing,
    @Range(min = "6 in", max = "60 in") Measure hangerSpacing) {
}
