/**
 * What the rules say of each junction: its kind, the sealing detail that belongs there, and the findings of the design. Knows the rules'
 * results as words and numbers; after this package nobody knows that a graph existed.
 *
 * <p>{@link org.seamledger.detail.Kinds} needs nothing but the measured facts of a line. {@link org.seamledger.detail.Details} sees them,
 * the {@code kind}, and those of {@link org.seamledger.junction.FactList#CHOICE}, which whoever chooses details adds.
 * {@link org.seamledger.detail.DesignReview} sees all of these too, finds {@code kind}, {@code lengthM}, {@code detail},
 * {@code metalFirst}, {@code beadOnly}, {@code sealantExposed} and a face's {@code slopeDegrees} by itself, and is given the rest of
 * {@link org.seamledger.junction.FactList}. A fact that can't be had is left out, and then breaks no rule.
 */
package org.seamledger.detail;
