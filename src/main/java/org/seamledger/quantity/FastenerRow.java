package org.seamledger.quantity;

/**
 * One line of fasteners of a junction.
 *
 * @param face the face it lies on, or empty where it lies along the line
 * @param spacingM greatest actual spacing on it; 0 where no two fasteners stand in one piece
 * @param throughTape whether it presses a tape
 * @param coverage share of that tape that it presses, 0 to 1; 1 where there is none
 */
public record FastenerRow(String place, String face, int count, double spacingM, boolean throughTape, double coverage) {
}
