/**
 * Where seams and pans lie on each roof face, and where they meet its junctions.
 *
 * <p>Input: a face's facets, each a region in its plane's own coordinates (u along the eave, v up the slope, true metres); coverage and
 * start. Seams are lines u = constant, clipped by the real outline with its holes. Output: seams with their spans, pans with their
 * panels (a cut list), pieces between seams along any line on the face, distances of round things from seams.
 *
 * <p>Left and right are those of a person who looks up the slope. A seam on an edge of the face is no seam: there the panel ends or is
 * turned up.
 */
package org.seamledger.quantity.layout;
