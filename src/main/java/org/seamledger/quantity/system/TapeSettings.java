package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * Sealing tape between sheets.
 *
 * @param compression that fasteners are meant to give it
 * @param reach how far to each side a fastener presses it (common practice, no source)
 * @param lowest lowest temperature of the metal for its use
 */
public record TapeSettings(@Range(min = "1/8 in", max = "6 in") Measure width, @Range(min = "1/64 in", max = "1 in") Measure thickness,
    @Range(min = "1 ft", max = "1000 ft") Measure roll, @Range(min = "0 %", max = "90 %") Measure compression,
    @Range(min = "1/4 in", max = "12 in") Measure reach, @Range(min = "-40 °C", max = "40 °C") Measure lowest) {
}
