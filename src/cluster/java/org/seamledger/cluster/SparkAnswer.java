package org.seamledger.cluster;

import java.io.Serializable;

/**
 * What comes back of a model.
 *
 * @param entry packed; empty where the known one still holds
 * @param unusable why rules or roof system can't be used, or the empty string
 */
record SparkAnswer(String name, byte[] entry, String unusable) implements Serializable {

  boolean isKnown() {
    return entry.length == 0;
  }
}
