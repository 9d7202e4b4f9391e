package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * Clips in the seams. How far apart they stand in each zone follows from the load, which a licensed engineer states, and from the tested
 * assembly; the defaults are common practice. Guide specifications allow up to 5 ft in the field and 30 in at edges and corners (UFC
 * 3-110-03, 2006).
 *
 * @param fieldSpacing greatest distance along a seam inside
 * @param edgeSpacing the same within the zone's width of an edge
 * @param cornerSpacing the same where two edges are that near
 * @param screws in each clip
 * @param meanRoofHeight of the building, for the zones' width; 0 where nobody stated it: then the plan alone gives the width
 */
public record ClipSettings(@Range(min = "3 in", max = "60 in") Measure fieldSpacing,
    @Range(min = "3 in", max = "60 in") Measure edgeSpacing,
    @Range(min = "3 in", max = "60 in") Measure cornerSpacing, int screws, @Range(min = "0 ft", max = "500 ft") Measure meanRoofHeight) {
}
