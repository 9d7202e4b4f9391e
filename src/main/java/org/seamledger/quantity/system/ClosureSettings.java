package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * Closures between the seams.
 *
 * @param height of the closure itself; the seam's where the file states nothing (common practice)
 * @param fasteningFlange width of the flange that lies on the tape
 */
public record ClosureSettings(@Range(min = "1/4 in", max = "12 in") Measure height,
    @FieldName("lip") @Range(min = "1/4 in", max = "6 in") Measure fasteningFlange) {
}
