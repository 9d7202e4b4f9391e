package org.seamledger.weather;

import org.seamledger.quantity.physics.Air;

/**
 * How warm a sheet of metal is outdoors, °C: sun that it absorbs, heat that it radiates to the sky, and wind. A sheet of 0.6 mm follows
 * within minutes, so that each hour is in balance; nothing goes through the insulated back. The sun is that on a level surface: a face
 * turned to it gets warmer, one turned away stays cooler. An estimate: whoever seals measures the metal.
 *
 * @param absorptance share of the sun that the colour absorbs
 * @param emittance of the finish, for heat
 */
public record MetalSurface(double absorptance, double emittance) {

  /** Stefan–Boltzmann constant, W/(m² K⁴). */
  private static final double SIGMA = 5.670374e-8;
  private static final double ZERO_C = 273.15;
  private static final double SEA_LEVEL_PA = 101325;
  /** A light wind where none is stated, m/s. */
  private static final double USUAL_WIND = 2;
  private static final int ROUNDS = 60;

  /**
   * Sol-air temperature: {@code t_e = t_o + α E / h_o − ε ΔR / h_o} (ASHRAE Handbook, Fundamentals). Any consistent units.
   *
   * @param air t_o
   * @param absorbed α E, solar radiation that is absorbed
   * @param coefficient h_o, of convection and radiation together
   * @param skyLoss ε ΔR: what a surface as warm as the air radiates more than it gets from the sky
   */
  static double solAir(double air, double absorbed, double coefficient, double skyLoss) {
    return air + absorbed / coefficient - skyLoss / coefficient;
  }

  /**
   * Temperature in balance. The coefficient of radiation {@code ε σ (T_s² + T_o²) (T_s + T_o)} is that between the surface as warm as it
   * gets and the air, which makes the sol-air temperature that of the surface.
   *
   * @param convection W/(m² K)
   * @param skyWm2 infrared radiation from the sky
   */
  double temperatureC(double airC, double sunWm2, double skyWm2, double convection) {
    double air = airC + ZERO_C;
    double skyLoss = emittance * (SIGMA * air * air * air * air - skyWm2);
    double surface = air;
    for (int i = 0; i < ROUNDS; i++) {
      double radiation = emittance * SIGMA * (surface * surface + air * air) * (surface + air);
      surface = (surface + solAir(air, absorptance * sunWm2, convection + radiation, skyLoss)) / 2;
    }
    return surface - ZERO_C;
  }

  /** The same in an hour of weather; as it was measured where it was. Sun that isn't known is none. */
  public double temperatureC(WeatherHour hour, double elevationM) {
    if (!Double.isNaN(hour.metalC())) {
      return hour.metalC();
    }
    double pressure = Double.isNaN(hour.pressurePa()) ? Air.pressurePa(elevationM) : hour.pressurePa();
    double wind = Double.isNaN(hour.windMs()) ? USUAL_WIND : hour.windMs();
    double sun = Double.isNaN(hour.sunWm2()) ? 0 : hour.sunWm2();
    double sky = Double.isNaN(hour.skyWm2()) ? skyWm2(hour) : hour.skyWm2();
    return temperatureC(hour.airC(), sun, sky, convection(wind, pressure));
  }

  /**
   * Coefficient of convection, {@code 5.7 + 3.8 v} W/(m² K), v in m/s (McAdams, for a plane in wind up to 5 m/s; textbook formula), and
   * by turbulent flow's 0.8th power of density less in thin air.
   */
  static double convection(double windMs, double pressurePa) {
    return (5.7 + 3.8 * windMs) * Math.pow(pressurePa / SEA_LEVEL_PA, 0.8);
  }

  /**
   * Infrared radiation from the sky, {@code ε σ T_o⁴}; of a clear one {@code ε = 0.711 + 0.0056 t + 7.3·10⁻⁵ t² + 0.013 cos(2π h / 24)},
   * t the dew point, h the hour (Berdahl and Martin 1984). Cloud fills what is missing to a black sky; one that isn't known is none.
   */
  static double skyWm2(WeatherHour hour) {
    double dew = Math.max(-40, hour.dewPointC());
    double clear = 0.711 + 0.0056 * dew + 7.3e-5 * dew * dew + 0.013 * Math.cos(2 * Math.PI * hour.hour() / 24);
    double cloud = Double.isNaN(hour.cloud()) ? 0 : hour.cloud();
    double air = hour.airC() + ZERO_C;
    return Math.min(1, clear + (1 - clear) * cloud) * SIGMA * air * air * air * air;
  }
}
