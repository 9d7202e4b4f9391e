package org.seamledger.node;

import org.seamledger.detail.FastenerType;
import org.seamledger.detail.Joins;

/**
 * Fasteners at a node.
 *
 * @param of id of the part that they hold
 * @param count for each piece of that part
 * @param lengthM of one
 */
public record NodeFastening(String place, String id, String of, int count, FastenerType type, Joins joins, double lengthM) {
}
