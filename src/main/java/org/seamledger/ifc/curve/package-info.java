/**
 * Curves and surfaces: lines, conics, splines and what is composed of them, as points or as facets. Chords deviate from a curve by no more
 * than {@link org.seamledger.geometry.Facets} allows.
 */
package org.seamledger.ifc.curve;
