package org.seamledger.order;

/**
 * Where a part of a line comes from.
 *
 * @param junction its id, or empty where it comes from a face as a whole
 * @param face its id, or empty where it comes from the junction's line, which belongs to all its faces
 * @param amount in the line's net unit
 */
public record OrderShare(String junction, String face, double amount) {
}
