package org.seamledger.quantity;

import java.util.Set;

/**
 * What the model holds at the roof's lines besides faces and what they end at.
 *
 * @param guttered ids of junctions along which a gutter hangs
 * @param parapets GlobalIds of walls that are parapets
 */
public record Surroundings(Set<String> guttered, Set<String> parapets) {

  /** Where nothing is known of them. */
  public static final Surroundings NONE = new Surroundings(Set.of(), Set.of());

  public Surroundings {
    guttered = Set.copyOf(guttered);
    parapets = Set.copyOf(parapets);
  }
}
