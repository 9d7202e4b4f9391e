package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * Climate and conditions of the building's place.
 *
 * @param elevation above sea level; 0 for a site below it
 * @param rainfall design intensity of an hour, for areas
 * @param fiveMinuteRainfall design intensity of five minutes, for valleys, gutters, channels and outlets, where water comes together at
 *     once; by default twice the hour's, between 100-year values of 8.94 in/h (NOAA Atlas 14, a station in North Carolina) and
 *     10.96 in/h (74.36/(t + 7.85)^0.75, New York)
 * @param runoff share of the rain that runs off
 * @param lowestMetal coldest the metal gets
 * @param installMetal temperature of the metal when it is fixed
 * @param installAir temperature of the air when sealants are applied
 * @param humidity relative, then
 * @param wind speed for wind-driven rain
 * @param marine within reach of salt spray
 * @param iceBarrier where the authority asks for an ice barrier: ice has formed along eaves there and dammed water
 *     (International Residential Code, table R301.2)
 */
public record SiteSettings(@Range(min = "0 m", max = "6000 m") Measure elevation, @Range(min = "0 in/h", max = "40 in/h") Measure rainfall,
    @Range(min = "0 in/h", max = "80 in/h") Measure fiveMinuteRainfall,
    @Range(min = "10 %", max = "100 %") Measure runoff, @Range(min = "-80 °C", max = "40 °C") Measure lowestMetal,
    @Range(min = "0 °C", max = "120 °C") Measure highestMetal, @Range(min = "-40 °C", max = "80 °C") Measure installMetal,
    @Range(min = "-40 °C", max = "60 °C") Measure installAir, @Range(min = "0 %", max = "100 %") Measure humidity,
    @Range(min = "0 mph", max = "250 mph") Measure wind, boolean marine,
    boolean iceBarrier) {
}
