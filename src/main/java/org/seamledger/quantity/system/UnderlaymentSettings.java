package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/** Underlayment in rolls, laid from eave to ridge. */
public record UnderlaymentSettings(@Range(min = "12 in", max = "120 in") Measure rollWidth,
    @Range(min = "10 ft", max = "500 ft") Measure rollLength, @Range(min = "0 in", max = "24 in") Measure sideLap,
    @Range(min = "0 in", max = "24 in") Measure endLap) {
}
