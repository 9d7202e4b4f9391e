package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;
import org.seamledger.quantity.layout.Start;

/**
 * Where panels start on a face.
 *
 * @param start where the seams of a face begin
 * @param offset of the first seam from there, to the right when you look up the slope
 */
public record LayoutSettings(Start start, @Range(min = "0 in", max = "48 in") Measure offset) {
}
