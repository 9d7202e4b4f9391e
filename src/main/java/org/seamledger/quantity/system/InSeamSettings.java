package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * The non-curing sealant of seams and laps, from its data sheet.
 *
 * @param lowest temperature of the metal for its use
 * @param highest likewise
 */
public record InSeamSettings(@Range(min = "-40 °C", max = "40 °C") Measure lowest, @Range(min = "0 °C", max = "120 °C") Measure highest) {
}
