package org.seamledger.samples;

/** Lengths in metres from other units; the factors are exact by definition. */
public final class Units {
  private Units() {
  }

  public static double feet(double feet) {
    return feet * 0.3048;
  }

  public static double inches(double inches) {
    return inches * 0.0254;
  }

  public static double mm(double millimetres) {
    return millimetres / 1000;
  }
}
