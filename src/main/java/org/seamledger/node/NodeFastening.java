package org.seamledger.node;

/**
 * Fasteners at a node.
 *
 * @param of id of the part that they hold
 * @param count for each piece of that part
 * @param type such as {@code rivet}
 * @param joins what they join, such as {@code metal-metal}
 * @param lengthM of one
 */
public record NodeFastening(String place, String id, String of, int count, String type, String joins, double lengthM) {
}
