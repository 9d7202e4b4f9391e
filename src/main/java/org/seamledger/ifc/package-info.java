/**
 * Exchange structures in, a {@link org.seamledger.element.Building} out: what carries the roof, and what is near it, in metres, Z up.
 *
 * <p>{@link org.seamledger.ifc.IfcReader} does this:
 *
 * <ol>
 * <li>Of every model, take schema and units, and skim the relations: who is part of whom, what goes through what.
 * <li>Choose the roof elements ({@code Roofs}): by class, by type, as parts; where no model has any, by name, which is a finding.
 * <li>Make their bodies ({@code Shapes}, {@code Items}). Where they lie far from the world's origin, move everything near it first.
 * <li>Of every other element that may meet a roof ({@code classes.txt} says which classes), learn where it is ({@code Draft}); make a
 * body of it only if it is near a roof ({@code Neighbours}).
 * </ol>
 *
 * <p>What an input must satisfy: nothing. A file that is no exchange structure, or of another schema, ends in
 * {@link org.seamledger.finding.UnreadableModelException}; whatever else is wrong ends in a finding that names the instance and the
 * element, and the rest is read ({@code Problem} is how it gets there).
 *
 * <p>What the output guarantees: coordinates are finite; GlobalIds are unique; the order of instances in a file changes nothing; the same
 * bytes give the same building. Elements that are not near a roof, and filled openings of walls, are not in it.
 *
 * <p>The rooms, from the bottom up: {@code entity} (instances by attribute name, units, schemas), {@code placement} (local systems and
 * maps), {@code curve} (curves and surfaces), {@code solid} (profiles, sweeps, boundaries, Booleans), {@code product} (which elements there
 * are, what belongs to them, their shapes), and this one, which reads models and joins them.
 *
 * <p>Lengths are converted to metres, angles to radians, where a parameter is read ({@code Entity}), so nothing further in knows units.
 * Where the schemas differ is in one place ({@code Schema}).
 */
package org.seamledger.ifc;
