package org.seamledger.measure;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/** Measures as text for people; always the same text for the same number, whatever the machine's language. */
public final class MeasureFormat {

  private static final double SIXTEENTH = 0.0254 / 16;
  private static final int SIXTEENTHS_IN_FOOT = 192;
  private static final double[] POWERS = {1, 10, 100, 1e3, 1e4, 1e5, 1e6};
  private static final long UNSURE = -1;
  /** Below this a double's neighbours are 0.002 apart, so that neither the product nor the shortest decimal goes by more. */
  private static final double MOST_SURE = 1e13;
  private static final double SURE = 0.49;
  /** Sign, point and the digits of a number below {@link #MOST_SURE}, or of one with as many places as there are powers. */
  public static final int LONGEST = 24;

  private MeasureFormat() {
  }

  /** Metres with three decimals: {@code 12.192 m}. */
  public static String formatMetres(double metres) {
    return fixed(metres, 3) + " m";
  }

  /** Whole millimetres: {@code 406 mm}. */
  public static String formatMillimetres(double metres) {
    return fixed(metres * 1000, 0) + " mm";
  }

  /**
   * Feet and inches to the nearest 1/16 in: {@code 40 ft 0 in}, {@code 13 ft 5 in}, {@code 2 5/16 in}; below one foot only inches.
   * Sixteenths carry: 11 31/32 in is {@code 1 ft 0 in}.
   */
  public static String formatFeetInches(double metres) {
    long sure = sixteenths(metres);
    if (sure != UNSURE) {
      long feet = sure / SIXTEENTHS_IN_FOOT;
      String inches = mixed((int) (sure % SIXTEENTHS_IN_FOOT)) + " in";
      return (metres < 0 && sure > 0 ? "-" : "") + (feet == 0 ? inches : feet + " ft " + inches);
    }
    BigInteger sixteenths = allSixteenths(metres);
    String sign = sixteenths.signum() < 0 ? "-" : "";
    BigInteger[] feet = sixteenths.abs().divideAndRemainder(BigInteger.valueOf(SIXTEENTHS_IN_FOOT));
    String inches = mixed(feet[1].intValueExact()) + " in";
    return sign + (feet[0].signum() == 0 ? inches : feet[0] + " ft " + inches);
  }

  /** Inches to the nearest 1/16, never feet: {@code 187 7/16 in}. */
  public static String formatInches(double metres) {
    BigInteger sixteenths = allSixteenths(metres);
    String sign = sixteenths.signum() < 0 ? "-" : "";
    BigInteger[] whole = sixteenths.abs().divideAndRemainder(BigInteger.valueOf(16));
    String part = whole[1].signum() == 0 ? "" : mixed(whole[1].intValueExact());
    return sign + (part.isEmpty() ? whole[0].toString() : whole[0].signum() == 0 ? part : whole[0] + " " + part) + " in";
  }

  /** The same for what must not be less: to the next 1/16 above, so that 0.213 in is {@code 1/4 in}. */
  public static String formatInchesUp(double metres) {
    return formatInches(up(metres, SIXTEENTH));
  }

  /** Tenths of a millimetre, without zeros at the end, for what must not be less: {@code 5.5 mm}. */
  public static String formatMillimetresUp(double metres) {
    return plain(up(metres, 1e-4) * 1000, 1) + " mm";
  }

  /** The next multiple above; what is one within a millionth of it stays. */
  private static double up(double metres, double step) {
    return Math.ceil(metres / step - 1e-6) * step;
  }

  /** Both systems: {@code 12.192 m (40 ft 0 in)}. */
  public static String formatBoth(double metres) {
    return formatMetres(metres) + " (" + formatFeetInches(metres) + ")";
  }

  /** Square metres and square feet: {@code 99.71 m² (1073.3 ft²)}. */
  public static String formatArea(double squareMetres) {
    return fixed(squareMetres, 2) + " m² (" + fixed(Unit.SQUARE_FOOT.fromSi(squareMetres), 1) + " ft²)";
  }

  /** A slope as rise in 12 and degrees: {@code 6:12 (26.57°)}. */
  public static String formatSlope(double degrees) {
    return plain(12 * Math.tan(Math.toRadians(degrees)), 2) + ":12 (" + fixed(degrees, 2) + "°)";
  }

  /** Exactly so many decimals, a point as the decimal sign, halves away from zero; never "-0". */
  public static String fixed(double value, int decimals) {
    long n = decimals < POWERS.length ? whole(Math.abs(value) * POWERS[decimals]) : UNSURE;
    if (n != UNSURE) {
      char[] text = new char[LONGEST];
      int start = digits(value < 0 && n > 0, n, decimals, text);
      return new String(text, start, text.length - start);
    }
    BigDecimal d = rounded(value, decimals);
    return d.signum() == 0 ? d.abs().toPlainString() : d.toPlainString();
  }

  /** At most so many decimals, without trailing zeros. */
  public static String plain(double value, int decimals) {
    long n = decimals < POWERS.length ? whole(Math.abs(value) * POWERS[decimals]) : UNSURE;
    if (n != UNSURE) {
      char[] text = new char[LONGEST];
      int start = plain(value < 0, n, decimals, text);
      return new String(text, start, text.length - start);
    }
    BigDecimal d = rounded(value, decimals);
    return d.signum() == 0 ? "0" : d.stripTrailingZeros().toPlainString();
  }

  /**
   * The same at the end of a text of at least {@link #LONGEST} characters, for whoever writes many.
   *
   * @return where it begins; below 0 where only the string is sure to be right
   */
  public static int plain(double value, int decimals, char[] text) {
    long n = decimals < POWERS.length ? whole(Math.abs(value) * POWERS[decimals]) : UNSURE;
    return n == UNSURE ? -1 : plain(value < 0, n, decimals, text);
  }

  /** The nearest whole number of one that is small and not near a half, so that it is the same by all its digits; else UNSURE. */
  private static long whole(double scaled) {
    long n = (long) (scaled + 0.5);
    return scaled < MOST_SURE && Math.abs(scaled - n) < SURE ? n : UNSURE;
  }

  private static int plain(boolean negative, long n, int decimals, char[] text) {
    long left = n;
    int places = n == 0 ? 0 : decimals;
    while (places > 0 && left > Integer.MAX_VALUE && left % 10 == 0) {
      left /= 10;
      places--;
    }
    if (left <= Integer.MAX_VALUE) {
      int small = (int) left;
      for (int tenth = tenth(small); places > 0 && tenth * 10 == small; tenth = tenth(small)) {
        small = tenth;
        places--;
      }
      left = small;
    }
    return digits(negative && n > 0, left, places, text);
  }

  /** A whole number with a point before so many of its digits, at the end of a text; where it begins. */
  private static int digits(boolean negative, long n, int decimals, char[] text) {
    int start = text.length;
    long left = n;
    int places = decimals;
    for (; left > Integer.MAX_VALUE; places--) {
      start = digit((int) (left % 10), places, start, text);
      left /= 10;
    }
    for (int small = (int) left; places >= 0 || small != 0; places--) {
      int tenth = tenth(small);
      start = digit(small - tenth * 10, places, start, text);
      small = tenth;
    }
    if (negative) {
      text[--start] = '-';
    }
    return start;
  }

  /**
   * A tenth of a whole number from 0 on, rounded down: 0xCCCCCCCD is 2³⁵/10, rounded up, which is exact for all of 32 bits (Granlund and
   * Montgomery 1994). The small compiler makes a division of {@code / 10}, which takes many times as long; a ledger has millions of digits.
   */
  private static int tenth(int n) {
    return (int) (n * 0xCCCCCCCDL >>> 35);
  }

  /** @param place how many places stand behind the digit */
  private static int digit(int digit, int place, int start, char[] text) {
    int at = start;
    text[--at] = (char) ('0' + digit);
    if (place == 1) {
      text[--at] = '.';
    }
    return at;
  }

  private static BigDecimal rounded(double value, int decimals) {
    // The shortest decimal that names the double, so that 2.675 rounds as people read it.
    return new BigDecimal(Double.toString(value)).setScale(decimals, RoundingMode.HALF_UP);
  }

  /** A fraction as people write it: {@code 7/8}, {@code 1 1/2}, {@code 10.1}. */
  static String number(Fraction f) {
    BigInteger[] whole = f.numerator().abs().divideAndRemainder(f.denominator());
    String sign = f.signum() < 0 ? "-" : "";
    if (whole[1].signum() == 0) {
      return sign + whole[0];
    }
    boolean binary = f.denominator().bitCount() == 1 && f.denominator().bitLength() <= 7;
    if (binary) {
      String part = whole[1] + "/" + f.denominator();
      return sign + (whole[0].signum() == 0 ? part : whole[0] + " " + part);
    }
    return plain(f.toDouble(), 6);
  }

  /** Without their sign; UNSURE where they are not small, or near a half. */
  private static long sixteenths(double metres) {
    return whole(Math.abs(metres) * 16 / 0.0254);
  }

  private static BigInteger allSixteenths(double metres) {
    return new BigDecimal(Double.toString(metres)).multiply(BigDecimal.valueOf(16))
        .divide(new BigDecimal("0.0254"), 0, RoundingMode.HALF_UP).toBigIntegerExact();
  }

  private static String mixed(int sixteenths) {
    int whole = sixteenths / 16;
    int part = sixteenths % 16;
    if (part == 0) {
      return Integer.toString(whole);
    }
    int common = Integer.lowestOneBit(part);
    String fraction = part / common + "/" + 16 / common;
    return whole == 0 ? fraction : whole + " " + fraction;
  }
}
