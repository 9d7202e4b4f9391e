package org.seamledger.quantity;

/**
 * Equal pieces to cut for one face of a junction.
 *
 * @param lengthM of one piece along the line, net of the seams' thickness
 * @param bevelDegrees cut of its ends from square
 * @param shorter true where it is shorter than the least piece that can be worked
 */
public record ClosureCut(String part, String face, int count, double lengthM, double bevelDegrees, boolean shorter) {
}
