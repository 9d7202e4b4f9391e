package org.seamledger.detail;

import org.seamledger.junction.Junction;

/**
 * A junction with its kind: the one that the shapes gave it, or that a person chose in their place.
 *
 * @param type its kind, {@link Kind#UNCLASSIFIED} where it has none
 * @param explanation what the shapes say, whoever chose the kind
 */
public record KindedJunction(Junction junction, Kind type, Explanation explanation) {

  /** The kind's id, such as {@code level-valley}. */
  public String kind() {
    return type.id();
  }
}
