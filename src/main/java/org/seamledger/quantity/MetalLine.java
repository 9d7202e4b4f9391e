package org.seamledger.quantity;

/**
 * A metal part of a junction.
 *
 * @param face the face it lies on, or empty where it lies along the line
 * @param pieces cut pieces, or stock lengths
 * @param lengthM of the line that it covers; for pieces between seams the sum of their lengths; 0 for a part made to measure
 * @param laps joints between stock lengths
 * @param girthM width of the sheet it is bent from
 */
public record MetalLine(String part, String face, int pieces, double lengthM, int laps, double girthM) {
}
