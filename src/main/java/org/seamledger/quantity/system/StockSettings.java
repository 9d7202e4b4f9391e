package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * How stock lengths are cut.
 *
 * @param leastPiece no piece of a run is shorter, where the run is not, and shorter offcuts are scrap
 * @param sawCut lost with each cut
 */
public record StockSettings(@Range(min = "0 in", max = "60 in") Measure leastPiece, @Range(min = "0 in", max = "1 in") Measure sawCut) {
}
