package org.seamledger.quantity.physics;

/**
 * How long a sealant that cures with the air's moisture takes: an estimate, since no public source gives figures. The rate must come
 * from the product's data sheet.
 *
 * <p>Model: the cured skin grows as {@code d = k √t}; k changes with the square root of the vapour in the air, so the time changes with
 * its inverse. Air pressure does not enter: elevation acts through colder and drier air alone. Tapes and other non-curing sealants have
 * no cure; solvent-release ones follow evaporation, not humidity.
 */
public final class Cure {

  private static final double SECONDS_PER_DAY = 86400;
  private static final double REFERENCE_C = 23;
  private static final double REFERENCE_HUMIDITY = 0.5;

  private Cure() {
  }

  /** How many times longer than at 23 °C and 50 % it takes at this weather; infinite in dry air. */
  public static double timeFactor(double celsius, double relativeHumidity) {
    double vapour = relativeHumidity * Air.saturationDensity(celsius);
    return REFERENCE_HUMIDITY * Air.saturationDensity(REFERENCE_C) / vapour;
  }

  /**
   * @param depthM thickness to cure from one side, as behind metal; half the thickness where both sides are open
   * @param firstDayM depth cured after one day at 23 °C and 50 % (data sheet)
   * @return seconds
   */
  public static double seconds(double depthM, double firstDayM, double celsius, double relativeHumidity) {
    double ratio = depthM / firstDayM;
    return SECONDS_PER_DAY * ratio * ratio * timeFactor(celsius, relativeHumidity);
  }
}
