package org.seamledger.finding;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4), by which files, rules, lines and results are told apart. */
public final class Sha256 {

  private Sha256() {
  }

  /** A digest to be fed piece by piece. */
  public static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** The 32 bytes of a text's hash in UTF-8. */
  public static byte[] of(String text) {
    return digest().digest(text.getBytes(StandardCharsets.UTF_8));
  }

  /** Bytes as 64 hexadecimal digits. */
  public static String hex(byte[] content) {
    return HexFormat.of().formatHex(digest().digest(content));
  }
}
