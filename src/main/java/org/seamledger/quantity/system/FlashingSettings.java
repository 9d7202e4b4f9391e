package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;
import org.seamledger.quantity.physics.Metal;

/**
 * Caps, trims and other flashings in stock lengths.
 *
 * @param metal the panel's where the file states nothing
 * @param girth of the part across a lap, for what seals the lap
 * @param lapSeal with tape, or with a non-curing sealant from the gun, since laps slide
 */
public record FlashingSettings(Metal metal, @Range(min = "1 ft", max = "100 ft") Measure length,
    @Range(min = "0 in", max = "24 in") Measure lap, @Range(min = "1 in", max = "60 in") Measure girth, LapSeal lapSeal) {
}
