/**
 * How several models of one building lie to each other.
 *
 * <p>{@link org.seamledger.site.MapConversion} is the standard's way from a model's own world into a map and, through the map, into another
 * model's world. {@link org.seamledger.site.Footprint} is what is kept of each model to compare it with the others: boxes and levels, no
 * bodies. {@link org.seamledger.site.ModelAlignment} compares two of them and says, as a finding, where they don't fit and which
 * {@link org.seamledger.site.RigidTransform} would make them. Nothing here moves anything.
 *
 * <p>Lengths are metres, Z is up, turns are anticlockwise from above.
 */
package org.seamledger.site;
