package org.seamledger.quantity;

import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;

/**
 * A sealant of a junction.
 *
 * @param face the face it lies on, or empty where it lies along the line
 * @param lines parallel lines
 * @param run how it runs, and so how its length was counted
 * @param lengthM all lines together
 * @param volumeM3 of a bead or of what is filled from the gun; 0 for tape
 */
public record SealLine(Seal.Form form, Seal.Role role, Seal.Exposure exposure, String place, String face, int lines, Run run,
    double lengthM, double volumeM3) {
}
