package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * Units of sale.
 *
 * @param sealant what gun sealants come in
 * @param sausage content of a foil pack
 * @param pail content of a pail
 * @param screws in a box
 * @param rivets in a box
 * @param clips in a box
 * @param plugs in a box
 * @param touchUpArea face area that one bottle of touch-up paint serves
 */
public record PackSettings(SealantPack sealant, @Range(min = "100 ml", max = "5 l") Measure sausage,
    @Range(min = "1 l", max = "250 l") Measure pail, int screws, int rivets, int clips, int plugs,
    @Range(min = "10 m2", max = "10000 m2") Measure touchUpArea) {
}
