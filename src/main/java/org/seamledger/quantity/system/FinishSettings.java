package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * What sun and sky do to the sheets: by their colour and finish.
 *
 * @param solarAbsorptance share of the sun's radiation that becomes heat: one less its solar reflectance
 * @param emittance share of a black body's heat radiation that it gives off
 */
public record FinishSettings(@Range(min = "1 %", max = "100 %") Measure solarAbsorptance,
    @Range(min = "1 %", max = "100 %") Measure emittance) {
}
