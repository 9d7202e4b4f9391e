package org.seamledger.enrich;

import java.math.BigInteger;
import java.util.Arrays;
import org.seamledger.finding.Sha256;

/**
 * GlobalIds of what this program adds: the same words give the same id, in every revision of a model. The 128 bits are a name-based UUID's
 * (RFC 9562 version 8, of SHA-256), written in the 64 digits of IfcGloballyUniqueId, the first of which holds two bits.
 */
final class StableGlobalId {

  private static final String DIGITS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$";
  private static final int LENGTH = 22;
  private static final int BITS = 6;
  private static final int BYTES = 16;

  private StableGlobalId() {
  }

  /** @param words that tell it from all others, in their order */
  static String of(String... words) {
    byte[] uuid = Arrays.copyOf(Sha256.of(String.join("\n", words)), BYTES);
    uuid[6] = (byte) (uuid[6] & 0x0F | 0x80);
    uuid[8] = (byte) (uuid[8] & 0x3F | 0x80);
    BigInteger number = new BigInteger(1, uuid);
    char[] text = new char[LENGTH];
    for (int i = LENGTH - 1; i >= 0; i--) {
      text[i] = DIGITS.charAt(number.intValue() & (1 << BITS) - 1);
      number = number.shiftRight(BITS);
    }
    return new String(text);
  }
}
