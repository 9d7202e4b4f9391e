package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * Coil that panels and trims are made of.
 *
 * @param seamAllowance sheet that the two legs of a panel's seams take beyond its coverage (common practice: 4 in for a double-fold seam of
 *     1 1/2 in, a coil of 20 in for a coverage of 16 in)
 * @param trimWidth width of the flat sheet that trims are slit from
 */
public record CoilSettings(@Range(min = "0 in", max = "24 in") Measure seamAllowance,
    @Range(min = "12 in", max = "80 in") Measure trimWidth) {
}
