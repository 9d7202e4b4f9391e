package org.seamledger.detail;

import org.seamledger.junction.Junction;

/**
 * A junction with the kind that the shapes gave it.
 *
 * @param kind one of the kinds of {@code shapes/kinds.ttl}, or {@code unclassified}
 */
public record KindedJunction(Junction junction, String kind, Explanation explanation) {
}
