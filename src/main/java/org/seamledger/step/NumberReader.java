package org.seamledger.step;

import java.nio.charset.StandardCharsets;

/** Numbers from their digits, clause 6.4.1 and 6.4.2 of ISO 10303-21. */
final class NumberReader {

  /** The largest power of ten that a double holds exactly. */
  private static final int EXACT_POWER = 22;
  /** Whole numbers below this are exact in a double. */
  private static final long EXACT_WHOLE = 1L << 53;
  private static final int LONG_DIGITS = 18;
  private static final double[] POWERS = {1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
      1e17, 1e18, 1e19, 1e20, 1e21, 1e22};

  private NumberReader() {
  }

  /** The value that a word stands for, or 0 where it stands for none. */
  static double special(String word) {
    return switch (word) {
      case "NAN" -> Double.NaN;
      case "INF", "INFINITY" -> Double.POSITIVE_INFINITY;
      default -> 0;
    };
  }

  /** Where the number that starts at {@code from} ends, or -1 where none starts there. */
  static int end(byte[] bytes, int from, int limit) {
    int at = sign(bytes, from, limit);
    int digits = at;
    at = digits(bytes, at, limit);
    int found = at - digits;
    if (at < limit && bytes[at] == '.') {
      digits = ++at;
      at = digits(bytes, at, limit);
      found += at - digits;
    }
    if (found == 0) {
      return -1;
    }
    if (at < limit && (bytes[at] | 0x20) == 'e') {
      int exponent = sign(bytes, at + 1, limit);
      at = digits(bytes, exponent, limit);
      return at == exponent ? -1 : at;
    }
    return at;
  }

  private static int sign(byte[] bytes, int at, int limit) {
    return at < limit && (bytes[at] == '-' || bytes[at] == '+') ? at + 1 : at;
  }

  private static int digits(byte[] bytes, int from, int limit) {
    int at = from;
    while (at < limit && KeywordTable.isDigit(bytes[at])) {
      at++;
    }
    return at;
  }

  /**
   * The number between two places that {@link #end} found. Short ones by one exact multiplication or division, which rounds once and so
   * correctly (W. D. Clinger, "How to Read Floating Point Numbers Accurately", 1990); others by the platform.
   */
  static Value value(byte[] bytes, int from, int to) {
    boolean negative = bytes[from] == '-';
    long mantissa = 0;
    int digits = 0;
    int point = -1;
    int at = sign(bytes, from, to);
    for (; at < to && (bytes[at] | 0x20) != 'e'; at++) {
      if (bytes[at] == '.') {
        point = digits;
      } else {
        mantissa = digits < LONG_DIGITS ? 10 * mantissa + bytes[at] - '0' : mantissa;
        digits++;
      }
    }
    if (point < 0 && at == to) {
      return whole(bytes, from, to, negative ? -mantissa : mantissa, digits);
    }
    int power = exponent(bytes, at, to) - (point < 0 ? 0 : digits - point);
    if (digits > LONG_DIGITS || mantissa >= EXACT_WHOLE || Math.abs(power) > EXACT_POWER) {
      return new Value.Real(Double.parseDouble(ascii(bytes, from, to)));
    }
    double value = power < 0 ? mantissa / POWERS[-power] : mantissa * POWERS[power];
    return new Value.Real(negative ? -value : value);
  }

  private static Value whole(byte[] bytes, int from, int to, long value, int digits) {
    if (digits <= LONG_DIGITS) {
      return new Value.Whole(value);
    }
    try {
      return new Value.Whole(Long.parseLong(ascii(bytes, from, to)));
    } catch (NumberFormatException e) {
      return new Value.Real(Double.parseDouble(ascii(bytes, from, to)));
    }
  }

  /** The exponent's value, kept from overflowing; 0 where there is none. */
  private static int exponent(byte[] bytes, int from, int to) {
    if (from == to) {
      return 0;
    }
    int at = sign(bytes, from + 1, to);
    boolean negative = bytes[at - 1] == '-';
    int value = 0;
    for (; at < to; at++) {
      value = Math.min(10 * value + bytes[at] - '0', 100_000);
    }
    return negative ? -value : value;
  }

  private static String ascii(byte[] bytes, int from, int to) {
    return new String(bytes, from, to - from, StandardCharsets.ISO_8859_1);
  }
}
