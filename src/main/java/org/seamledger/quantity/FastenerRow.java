package org.seamledger.quantity;

import org.seamledger.detail.FastenerType;
import org.seamledger.detail.Joins;

/**
 * One line of fasteners of a junction, or the part of it that joins the same.
 *
 * @param id of the fastening in its detail
 * @param face the face it lies on, or empty where it lies along the line
 * @param spacingM greatest actual spacing on it; 0 where no two fasteners stand in one piece
 * @param throughTape whether it presses a tape
 * @param coverage share of that tape that it presses, 0 to 1; 1 where there is none
 * @param lengthM of one fastener
 * @param slotM length of the slots that it stands in, where what lies on top slides; 0 where it doesn't
 * @param exposed whether its heads see the weather
 */
public record FastenerRow(String place, String id, String face, int count, double spacingM, boolean throughTape, double coverage,
    Joins joins, FastenerType type, double lengthM, double slotM, boolean exposed) {
}
