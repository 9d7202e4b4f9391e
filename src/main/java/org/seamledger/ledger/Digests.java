package org.seamledger.ledger;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Hashes that make ids. */
final class Digests {

  private Digests() {
  }

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** The first 64 bits of the hash of a text, as 16 hexadecimal digits. */
  static String shortId(String text) {
    byte[] hash = sha256().digest(text.getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().formatHex(hash, 0, 8);
  }
}
