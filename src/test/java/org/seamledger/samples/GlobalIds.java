package org.seamledger.samples;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** GlobalIds from names: 128 bits of a hash in the 22 characters of IfcGloballyUniqueId. */
final class GlobalIds {

  private static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$";

  private GlobalIds() {
  }

  static String of(String name) {
    byte[] hash;
    try {
      hash = MessageDigest.getInstance("SHA-256").digest(name.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
    java.math.BigInteger bits = new java.math.BigInteger(1, java.util.Arrays.copyOf(hash, 16));
    char[] text = new char[22];
    for (int i = 21; i >= 0; i--) {
      text[i] = ALPHABET.charAt(bits.intValue() & 63);
      bits = bits.shiftRight(6);
    }
    return new String(text);
  }
}
