package org.seamledger.shacl;

import java.util.List;

/**
 * What a set of shapes says of a thing.
 *
 * @param conforming words of the shapes that it conforms to, sorted
 * @param nearest word of the shape that it misses by the fewest constraints, or the empty string where it misses none
 * @param missed what that shape requires and does not get, in words
 */
public record Verdict(List<String> conforming, String nearest, List<String> missed) {
  public Verdict {
    conforming = List.copyOf(conforming);
    missed = List.copyOf(missed);
  }
}
