package org.seamledger.step;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Eight bytes looked at together, as one little-endian {@code long}. Each test gives a word whose lowest set bit lies in the first byte
 * that meets it, or 0; higher set bits mean nothing. Method: "determine if a word has a zero byte", S. E. Anderson, Bit Twiddling Hacks.
 */
final class ByteLanes {

  private static final VarHandle LONGS = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final long ONES = 0x0101010101010101L;
  private static final long HIGHS = 0x8080808080808080L;
  private static final long LOWS = 0x7F7F7F7F7F7F7F7FL;
  private static final long APOSTROPHES = '\'' * ONES;
  private static final long PARENTHESES = '(' * ONES;
  private static final long STARS = '*' * ONES;

  private ByteLanes() {
  }

  static long at(byte[] bytes, int position) {
    return (long) LONGS.get(bytes, position);
  }

  static long apostrophe(long word) {
    return zero(word ^ APOSTROPHES);
  }

  static long parenthesis(long word) {
    return zero(word ^ PARENTHESES);
  }

  /**
   * Bytes that end the plain run inside an instance: apostrophe, slash, and {@code : ; < = > ?}, of which only the semicolon is lawful
   * there. Bytes above 127 may be taken for one of them.
   */
  static long stop(long word) {
    long low = word & LOWS;
    long colonToQuestion = low + 0x46 * ONES & ~(low + 0x40 * ONES);
    // Apostrophe (27) and slash (2F) differ in one bit only.
    long apostropheOrSlash = ~(((low | 0x08 * ONES) ^ 0x2F * ONES) + LOWS);
    return (colonToQuestion | apostropheOrSlash) & HIGHS;
  }

  /** Index, 0 to 7, of the byte that a test's result points to. */
  static int index(long result) {
    return Long.numberOfTrailingZeros(result) >>> 3;
  }

  private static long zero(long word) {
    return word - ONES & ~word & HIGHS;
  }
}
