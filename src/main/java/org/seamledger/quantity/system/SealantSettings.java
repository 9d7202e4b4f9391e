package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * The sealant of the beads, from its data sheet.
 *
 * @param cure how it sets
 * @param acidCuring true for one that gives off acetic acid
 * @param firstDayDepth depth cured after a day at 23 °C and 50 %
 * @param lowest lowest temperature of air and metal for its use
 * @param highest temperature of the air for its use
 * @param dewPointMargin how much warmer than the dew point the metal must be (a rule of coating work, used as a caution)
 * @param yieldStress 0 where the data sheet does not say
 * @param movementCapability share of its width
 * @param skinTime until a skin has formed, at 23 °C and 50 %
 * @param holdTime how long an upright bead stands before it is looked at and covered, at 23 °C and 50 %
 * @param highestHumidity of the air, relative, for its use
 * @param highestMetal temperature of the metal at which an upright bead still stands
 */
public record SealantSettings(CureKind cure, boolean acidCuring, @Range(min = "0.1 mm", max = "20 mm") Measure firstDayDepth,
    Measure lowest,
    Measure highest, @Range(min = "0 K", max = "20 K") Measure dewPointMargin,
    @Range(min = "500 kg/m3", max = "3000 kg/m3") Measure density, @Range(min = "0 Pa", max = "10 kPa") Measure yieldStress,
    @Range(min = "1 %", max = "200 %") Measure movementCapability, @Range(min = "1 min", max = "30 d") Measure skinTime,
    @Range(min = "0 min", max = "60 d") Measure holdTime, @Range(min = "1 %", max = "100 %") Measure highestHumidity,
    @Range(min = "0 °C", max = "120 °C") Measure highestMetal) {
}
