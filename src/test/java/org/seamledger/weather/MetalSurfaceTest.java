package org.seamledger.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How warm metal gets, against published formulas and worked problems. */
class MetalSurfaceTest {

  private static final double SIGMA = 5.670374e-8;

  /**
   * ASHRAE's sol-air temperature: α/h_o 0.15 for light and 0.30 h ft² °F/Btu for dark surfaces, εΔR/h_o 7 °F for a level one, which is
   * 20 Btu/(h ft²) at h_o 3 (public pages that quote the Handbook of Fundamentals). 95 °F and 250 Btu/(h ft²): 125.5 and 163 °F.
   */
  @ParameterizedTest
  @CsvSource({"0.45, 250, 125.5", "0.90, 250, 163.0", "0.90, 0, 88.0"})
  void solAir(double absorptance, double sun, double expected) {
    assertThat(MetalSurface.solAir(95, absorptance * sun, 3, 21)).isEqualTo(expected, within(1e-9));
  }

  /** A metal roof in a heat-transfer textbook: 1100 W/m², h 25, air 27 °C, α 0.60, ε 0.20, the sky at 0 K: 321.7 K, or 48.5 °C. */
  @Test
  void metalRoofOfATextbook() {
    assertThat(new MetalSurface(0.60, 0.20).temperatureC(27, 1100, 0, 25)).isEqualTo(48.5, within(0.1));
  }

  /**
   * Peak rise of roofs in the sun (Lawrence Berkeley National Laboratory): (1 − R) · 1000 W/m² = (12.4 + 6.1 ε) ΔT + 61 ε; R 0.05, ε 0.9:
   * 50 K. It takes radiation as a straight line through the air's temperature, 26.6 °C by its 6.1 W/(m² K); radiation grows faster.
   */
  @ParameterizedTest
  @CsvSource({"0.05, 0.90, 50.0, 4", "0.60, 0.25, 27.6, 1", "0.25, 0.85, 39.7, 3", "0.70, 0.85, 14.1, 0.6"})
  void peakRise(double reflectance, double emittance, double rise, double more) {
    double air = Math.cbrt(6.1 / (4 * SIGMA));
    double sky = SIGMA * air * air * air * air - 61;
    double found = new MetalSurface(1 - reflectance, emittance).temperatureC(air - 273.15, 1000, sky, 12.4) - (air - 273.15);
    assertThat(found).isBetween(rise - more, rise + 0.1);
  }

  /** What comes out is in balance: sun and sky in, convection and radiation out. */
  @ParameterizedTest
  @CsvSource({"-15, 0, 180, 8", "8, 120, 300, 13", "22, 900, 330, 9.5", "38, 1100, 420, 20"})
  void isInBalance(double air, double sun, double sky, double convection) {
    double metal = new MetalSurface(0.7, 0.85).temperatureC(air, sun, sky, convection);
    double kelvin = metal + 273.15;
    double balance = 0.7 * sun + 0.85 * (sky - SIGMA * Math.pow(kelvin, 4)) - convection * (metal - air);
    assertThat(balance).isEqualTo(0, within(1e-6));
  }

  /** Under a clear sky at night metal is colder than the air: up to 25 °F (trade journal of an association of roofers); under cloud not. */
  @Test
  void clearNightsCoolMetal() {
    MetalSurface dark = new MetalSurface(0.9, 0.9);
    double clear = dark.temperatureC(hour(0, 10, 0.5, 0, 0, 0.5), 0);
    double cloudy = dark.temperatureC(hour(0, 10, 0.5, 0, 1, 0.5), 0);
    assertThat(10 - clear).isBetween(4.0, 25 / 1.8);
    assertThat(cloudy).isEqualTo(10, within(1e-6));
    // In thin air wind takes less heat away: metal in the sun gets warmer.
    WeatherHour sunny = hour(12, 20, 0.4, 900, 0, 2);
    assertThat(dark.temperatureC(sunny, 3000)).isGreaterThan(dark.temperatureC(sunny, 0) + 3);
  }

  /**
   * Radiation of a clear sky: Berdahl and Martin's emissivity, 0.711 + 0.0056 t + 7.3·10⁻⁵ t² (+ 0.013 at midnight); at a dew point of
   * 10 °C 0.7743 by hand, − 0.013 at noon.
   */
  @Test
  void clearSky() {
    double black = SIGMA * Math.pow(293.15, 4);
    double humidity = org.seamledger.quantity.physics.Air.saturationPa(10) / org.seamledger.quantity.physics.Air.saturationPa(20);
    assertThat(MetalSurface.skyWm2(hour(12, 20, humidity, 0, 0, 2)) / black).isEqualTo(0.7743 - 0.013, within(1e-4));
    assertThat(MetalSurface.skyWm2(hour(0, 20, humidity, 0, 0, 2)) / black).isEqualTo(0.7743 + 0.013, within(1e-4));
  }

  @Test
  void whatWasMeasuredCounts() {
    WeatherHour measured = WeatherSeries.hour(12, 20, 0.5, 900, 0, 2, 31);
    assertThat(new MetalSurface(0.9, 0.9).temperatureC(measured, 0)).isEqualTo(31);
  }

  private static WeatherHour hour(int hour, double air, double humidity, double sun, double cloud, double wind) {
    return WeatherSeries.hour(hour, air, humidity, sun, cloud, wind, Double.NaN);
  }
}
