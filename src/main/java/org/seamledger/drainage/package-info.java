/**
 * A roof's surface and its junctions in, the way of the water out: which face and which line it runs to, how much plan area's rain, and
 * where it leaves the roof or stays.
 *
 * <p>On a facet water runs straight down the slope. Lines along the slope through every corner of the facet's outline divide it into
 * {@code Cell}s, each with one edge above and one below, so that all water of a cell comes to one edge; how much comes to each part of the
 * edge is a piecewise linear function ({@code Profile}), and nothing is sampled. What lies beyond the edge decides what follows
 * ({@code Tracer}): a face that falls away takes the water on; one that rises from the line, a wall or a curb leads it along the line
 * to the low end, a level line to the nearest end where it can leave ({@code LevelLines}); over a free edge it drops on the highest face
 * below, or leaves the roof ({@code Landings}). At the end of a line it goes on down the steepest way that begins there
 * ({@code Release}). A level face leads nowhere but where the roof falls away from it, or to an outlet.
 *
 * <p>Amounts are plan areas, square metres: times the intensity of the rain they are flows. Nothing is lost: what leaves and what stays is
 * the plan area of all faces.
 */
package org.seamledger.drainage;
