package org.seamledger.samples;

/**
 * A junction line that a house must have.
 *
 * @param lengthM in closed form
 * @param how the formula, in words or symbols
 */
public record ExpectedLine(String kind, double lengthM, String how) {
}
