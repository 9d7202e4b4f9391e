package org.seamledger.quantity.physics;

/**
 * Moist air and the standard atmosphere. Temperatures in °C, relative humidity as a share of one, pressures in Pa.
 */
public final class Air {

  // Magnus form with the constants of the World Meteorological Organization's guide (annex 4.B).
  private static final double E0 = 611.2;
  private static final double A = 17.62;
  private static final double B = 243.12;
  /** Gas constant of water vapour, J/(kg K). */
  private static final double R_VAPOUR = 461.523;

  private Air() {
  }

  /** Saturation pressure over water: {@code 611.2 · exp(17.62 T / (243.12 + T))}. */
  public static double saturationPa(double celsius) {
    return E0 * Math.exp(A * celsius / (B + celsius));
  }

  /** Dew point: {@code Td = 243.12 x / (17.62 − x)}, {@code x = ln(RH) + 17.62 T / (243.12 + T)}. Dry air has none: −∞. */
  public static double dewPointC(double celsius, double relativeHumidity) {
    if (relativeHumidity <= 0) {
      return Double.NEGATIVE_INFINITY;
    }
    double x = Math.log(relativeHumidity) + A * celsius / (B + celsius);
    return B * x / (A - x);
  }

  /** Vapour in saturated air, kg/m³. */
  public static double saturationDensity(double celsius) {
    return saturationPa(celsius) / (R_VAPOUR * (celsius + 273.15));
  }

  /** Mean pressure at an elevation: {@code 101325 · (1 − 2.25577·10⁻⁵ h)^5.25588} (US Standard Atmosphere 1976, troposphere). */
  public static double pressurePa(double elevationM) {
    return 101325 * Math.pow(1 - 2.25577e-5 * elevationM, 5.25588);
  }

  /** Mean temperature at an elevation: 15 °C less 6.5 K per kilometre. */
  public static double temperatureC(double elevationM) {
    return 15 - 0.0065 * elevationM;
  }
}
