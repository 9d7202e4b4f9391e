package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * How flashings end at walls and curbs.
 *
 * @param counterflashing how flashings end at walls
 * @param upstand height to which flashings stand up at walls and curbs
 */
public record WallSettings(Counterflashing counterflashing, @Range(min = "1 in", max = "36 in") Measure upstand) {
}
