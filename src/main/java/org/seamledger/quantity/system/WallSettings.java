package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * How flashings end at walls and curbs.
 *
 * @param counterflashing how flashings end at walls
 * @param upstand height to which flashings stand up at walls and curbs, above the top of the seams
 * @param parapetBelow walls that end lower than this above the roof are parapets; 0 for none but those that the model calls so
 */
public record WallSettings(Counterflashing counterflashing, @Range(min = "1 in", max = "36 in") Measure upstand,
    @Range(min = "0 in", max = "96 in") Measure parapetBelow) {
}
