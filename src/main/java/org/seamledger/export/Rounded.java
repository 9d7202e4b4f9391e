package org.seamledger.export;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Decimal text of measured numbers: rounded half up, without exponent, trailing zeros or a negative zero. */
final class Rounded {

  /** A micrometre, a square millimetre: beyond what any model states. */
  private static final int PLACES = 6;

  private Rounded() {
  }

  /** To six places, as short as it gets: {@code 4.804}, {@code 0}, {@code -1.5}. */
  static String of(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(PLACES, RoundingMode.HALF_UP).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  /** To exactly {@code places} places: {@code 4.80}. */
  static String fixed(double value, int places) {
    return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString();
  }
}
