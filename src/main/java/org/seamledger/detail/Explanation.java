package org.seamledger.detail;

import java.util.List;

/**
 * Why a junction has its kind.
 *
 * @param shapes the kind shapes that it conforms to: exactly one for a classified junction
 * @param nearest the shape that it missed by the fewest constraints, or the empty string where nobody asked ({@link Kinds#explain})
 * @param missed what that nearest shape asked for and did not get, in words
 */
public record Explanation(List<String> shapes, String nearest, List<String> missed) {
  public Explanation {
    shapes = List.copyOf(shapes);
    missed = List.copyOf(missed);
  }
}
