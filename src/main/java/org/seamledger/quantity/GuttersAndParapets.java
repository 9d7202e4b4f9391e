package org.seamledger.quantity;

import java.util.Set;

/**
 * What the model holds at the roof's lines besides faces and what they end at.
 *
 * @param guttered ids of junctions along which a gutter hangs
 * @param parapets GlobalIds of walls that are parapets
 */
public record GuttersAndParapets(Set<String> guttered, Set<String> parapets) {

  /** Where nothing is known of them. */
  public static final GuttersAndParapets NONE = new GuttersAndParapets(Set.of(), Set.of());

  public GuttersAndParapets {
    guttered = Set.copyOf(guttered);
    parapets = Set.copyOf(parapets);
  }
}
