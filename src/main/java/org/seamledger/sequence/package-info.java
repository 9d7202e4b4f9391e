/**
 * What is done in which order on the roof. {@link org.seamledger.sequence.StepFinder} makes steps of the parts of details and nodes and of
 * faces, {@link org.seamledger.sequence.StepPairs} puts them in order by {@code shapes/sequence.ttl},
 * {@link org.seamledger.sequence.StepOrder} lists them, {@link org.seamledger.sequence.HoldPointPlaces} says which of them wait for whom to
 * look, and {@link org.seamledger.sequence.CrewPlan} spreads them over the days of a crew.
 */
package org.seamledger.sequence;
