/**
 * How much of everything: panel layout, pieces, lengths, fasteners, volumes and the order, and the physics behind the findings.
 *
 * <p>Input: roof faces, junctions with the details that the rules chose, and the {@link org.seamledger.quantity.RoofSystem} in force.
 * Output: {@link org.seamledger.quantity.Quantities}, per junction with every step of the arithmetic in words, and for the project,
 * rounded up once. Lengths are metres, volumes cubic metres unless a name says otherwise.
 *
 * <ol>
 * <li>{@link org.seamledger.quantity.RoofLayout} puts seams on the faces; {@link org.seamledger.quantity.DetailFacts} tells the rules
 *     what they need of it to choose details.
 * <li>Each junction is counted on each of its faces, between their seams; closures are checked against the line's length by a second
 *     method.
 * <li>The project's sum adds waste and rounds to rolls, cartridges and boxes.
 * <li>{@link org.seamledger.quantity.DesignFacts} gives the review of the design its figures, {@link org.seamledger.quantity.Estimates}
 *     the reader theirs.
 * </ol>
 *
 * <p>What counts as what: tape is what lies along the lines; what seals the laps of parts and the ends of seams is a non-curing sealant
 * from the gun and stands apart, unless the system seals laps with tape. In-seam lengths are those of the seams of flat faces.
 */
package org.seamledger.quantity;
