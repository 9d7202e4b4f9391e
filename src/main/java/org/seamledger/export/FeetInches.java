package org.seamledger.export;

/** Lengths as a tape measure in feet reads them: {@code 15 ft 9 1/8 in}, to the nearest eighth of an inch. */
final class FeetInches {

  private static final double METRES_PER_EIGHTH = 0.0254 / 8;
  private static final int EIGHTHS_PER_FOOT = 96;

  private FeetInches() {
  }

  static String of(double metres) {
    long eighths = Math.round(Math.abs(metres) / METRES_PER_EIGHTH);
    long feet = eighths / EIGHTHS_PER_FOOT;
    long inches = eighths % EIGHTHS_PER_FOOT / 8;
    return (metres < 0 && eighths > 0 ? "-" : "") + feet + " ft " + inches + fraction((int) (eighths % 8)) + " in";
  }

  private static String fraction(int eighths) {
    return switch (eighths) {
      case 0 -> "";
      case 2 -> " 1/4";
      case 4 -> " 1/2";
      case 6 -> " 3/4";
      default -> " " + eighths + "/8";
    };
  }
}
