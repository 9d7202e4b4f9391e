package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;
import org.seamledger.quantity.physics.Metal;

/**
 * The panels and their seams.
 *
 * @param coverage distance from seam to seam
 * @param seamHeight from the pan to the top of the seam
 * @param seamThickness taken off each closure between two seams
 * @param thickness of the sheet
 * @param fixedAt the one line where a panel can't move
 * @param fixedClips whether there are clips that hold a panel fast where neither of its ends can be its fixed line
 * @param movementGap room for movement at its free end
 * @param longest longer panels are lapped of several pieces
 * @param minimumPiece shorter pieces are slivers
 */
public record PanelSettings(@Range(min = "3 in", max = "48 in") Measure coverage, @Range(min = "1/2 in", max = "6 in") Measure seamHeight,
    SeamKind seamKind, @Range(min = "0 in", max = "2 in") Measure seamThickness, Metal metal,
    @Range(min = "0.1 mm", max = "6 mm") Measure thickness, FixedAt fixedAt, boolean fixedClips,
    @Range(min = "0 in", max = "4 in") Measure movementGap,
    @Range(min = "10 ft", max = "1000 ft") Measure longest,
    @Range(min = "0 in", max = "24 in") Measure minimumPiece) {
}
