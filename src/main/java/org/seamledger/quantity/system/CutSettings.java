package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * What a panel's length as cut differs by from the face that it covers. Common practice without a public source: the maker's details say.
 *
 * @param hem sheet folded under at the low end, where panels hook over a cleat or trim
 * @param eaveOverhang how far panels reach over an eave, to the hem's edge
 * @param headSetback how far panels stop short of what is at their high end, for the upturn of the pan and for movement
 * @param endLap of one piece of panel over the next, where panels are lapped
 */
public record CutSettings(@Range(min = "0 in", max = "12 in") Measure hem, @Range(min = "0 in", max = "24 in") Measure eaveOverhang,
    @Range(min = "0 in", max = "24 in") Measure headSetback, @Range(min = "3 in", max = "24 in") Measure endLap) {
}
