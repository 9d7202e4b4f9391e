package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * Ridges.
 *
 * @param vented where air leaves there
 * @param slot width of the slot in the deck on either side of a vented ridge (common practice; the maker's net free area governs)
 * @param opening height of the openings of a vented closure, all of it above the solid metal, which is as high as any closure's (common
 *     practice)
 */
public record RidgeSettings(boolean vented, @Range(min = "0 in", max = "6 in") Measure slot,
    @Range(min = "1/4 in", max = "6 in") Measure opening) {
}
