package org.seamledger.http;

import java.security.SecureRandom;
import java.time.Duration;
import java.util.HexFormat;

/**
 * Browsers that showed the token: each has a cookie with a random value of its own, which says nothing of the token and can be revoked.
 * They end after {@link #LIFE} without use.
 */
interface Sessions {

  Duration LIFE = Duration.ofDays(30);
  int BYTES = 32;
  SecureRandom RANDOM = new SecureRandom();

  /** What a new cookie holds. */
  static String fresh() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  /** Begins one; returns what its cookie holds. */
  String open();

  /** Whether a cookie's value is one of a session that goes on. */
  boolean isOpen(String value);

  /** Ends one. */
  void revoke(String value);
}
