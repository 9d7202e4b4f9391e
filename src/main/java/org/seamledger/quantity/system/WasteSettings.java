package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/** Added to net quantities before they are rounded up, once for the project. Parts cut to measure have none by default. */
public record WasteSettings(@Range(min = "0 %", max = "100 %") Measure tape, @Range(min = "0 %", max = "100 %") Measure bead,
    @Range(min = "0 %", max = "100 %") Measure inSeam, @Range(min = "0 %", max = "100 %") Measure fasteners,
    @Range(min = "0 %", max = "100 %") Measure closures, @Range(min = "0 %", max = "100 %") Measure flashing) {
}
