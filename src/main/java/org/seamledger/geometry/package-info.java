/**
 * Points, planes, regions of planes and solids: immutable values and pure functions. Lengths are metres, areas square metres, Z is up.
 *
 * <p>Input: finite coordinates near the origin; points refuse others. Guarantee: no method changes an argument, and equal arguments give
 * equal
 * results to the bit. There is no Boolean kernel for solids: a {@link org.seamledger.geometry.Solid} gives its section with a plane, and
 * the
 * section of a Boolean result is the same Boolean of the sections, an overlay of {@link org.seamledger.geometry.Region}s on a grid of
 * 0.1 micrometres. What lies in the plane is settled by the side on which the section is taken ({@link
 * org.seamledger.geometry.SectionSide}) and the distance that counts as none, which is always an argument ({@link
 * org.seamledger.geometry.Tolerance}).
 *
 * <p>Degenerate input: lines without area give empty regions, crossing ones are mended by the even-odd rule; triangles without area are
 * left
 * out; a torn mesh is closed where its ends lie together; a direction of length zero is refused with an
 * {@link java.lang.IllegalArgumentException}. Only this package knows JTS.
 */
package org.seamledger.geometry;
