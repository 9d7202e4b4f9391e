package org.seamledger.quantity.layout;

import org.seamledger.geometry.Vec3;

/**
 * A level line within a face at which panels beside each other are divided, from its left to its right end.
 *
 * @param left in the building's local coordinates, metres
 * @param right likewise
 * @param runM longest panel that there would be without the line, metres
 */
public record CrossLine(Vec3 left, Vec3 right, double runM) {
}
