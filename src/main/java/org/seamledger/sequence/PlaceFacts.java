package org.seamledger.sequence;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the rules see of places: one object for all places of which they see the same, few on however many places. What was made of it is
 * found again by the object itself.
 */
final class PlaceFacts {

  private final Map<String, Object> facts;

  PlaceFacts(Map<String, Object> facts) {
    this.facts = Collections.unmodifiableMap(new TreeMap<>(facts));
  }

  /** Facts by name, in a map of the caller's own. */
  Map<String, Object> copy() {
    return new TreeMap<>(facts);
  }
}
