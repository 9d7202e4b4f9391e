package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/**
 * How fast a crew works: what one person does in a day of work. Common practice without a source, to be replaced by an office's own
 * records.
 *
 * @param people who work together on the roof
 * @param day hours of work in a day
 * @param begins time of day at which work begins, hours after midnight
 * @param underlayment area
 * @param panels area, clips included
 * @param seams length of seams closed
 * @param pan length of valley pans, linings and back pans
 * @param edgeMetal length of trims, cleats and zees
 * @param panelEnds length of edges where panels end
 * @param closures length of closures, tape, screws and beads included
 * @param cover length of caps, flashings and counterflashings
 * @param bead length of exposed beads, tooled
 * @param corner time for one corner piece or boot
 */
public record CrewSettings(int people, @Range(min = "1 h", max = "16 h") Measure day, @Range(min = "0 h", max = "20 h") Measure begins,
    @Range(min = "1 m2", max = "10000 m2") Measure underlayment, @Range(min = "1 m2", max = "10000 m2") Measure panels,
    @Range(min = "1 ft", max = "100000 ft") Measure seams, @Range(min = "1 ft", max = "10000 ft") Measure pan,
    @Range(min = "1 ft", max = "10000 ft") Measure edgeMetal, @Range(min = "1 ft", max = "10000 ft") Measure panelEnds,
    @Range(min = "1 ft", max = "10000 ft") Measure closures, @Range(min = "1 ft", max = "10000 ft") Measure cover,
    @Range(min = "1 ft", max = "10000 ft") Measure bead, @Range(min = "1 min", max = "80 h") Measure corner) {
}
