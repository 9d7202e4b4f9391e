package org.seamledger.detail;

import org.seamledger.junction.Junction;

/**
 * A junction with its kind: the one that the shapes gave it, or that a person chose in their place.
 *
 * @param kind one of the kinds of {@code shapes/kinds.ttl}, or {@code unclassified}
 * @param explanation what the shapes say, whoever chose the kind
 */
public record KindedJunction(Junction junction, String kind, Explanation explanation) {
}
