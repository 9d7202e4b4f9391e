package org.seamledger.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.physics.Cure;

/** When sealants may be applied: by the ranges that data sheets and guide specifications state. */
class SealingWindowsTest {

  private static WeatherHour weather(double airC, double humidity, double metalC) {
    return WeatherSeries.hour(10, airC, humidity, 0, 0, 2, metalC);
  }

  private static SealingHour now(WeatherHour hour, String system) {
    return SealingWindows.of(WeatherSeries.constant(hour), RoofSystem.parse(system, "s.json")).hours().get(0);
  }

  private static Set<Hindrance> bead(WeatherHour hour, String system) {
    return now(hour, system).against().get(SealantClass.BEAD);
  }

  /** UFGS 07 92 00: air of 4 to 32 °C; the limits themselves are in. */
  @ParameterizedTest
  @CsvSource({"4, true", "3.9, false", "32, true", "32.1, false", "20, true"})
  void guideSpecification(double air, boolean open) {
    Set<Hindrance> against = bead(weather(air, 0.5, Math.max(air, 10)), "{}");
    assertThat(against.isEmpty()).isEqualTo(open);
    assertThat(open || against.contains(air < 10 ? Hindrance.COLD_AIR : Hindrance.HOT_AIR)).isTrue();
  }

  /** A roof sealant's data sheet: 40 to 100 °F, skin after 24 h, cured after 7 days at 25 °C and 50 %. Its numbers govern. */
  @Test
  void theDataSheetGoverns() {
    String sheet = "{\"sealant\": {\"lowest\": \"40 °F\", \"highest\": \"100 °F\", \"skinTime\": \"24 h\", \"holdTime\": \"7 d\"}}";
    assertThat(bead(weather(37, 0.5, 40), sheet)).isEmpty();
    assertThat(bead(weather(37, 0.5, 40), "{}")).containsExactly(Hindrance.HOT_AIR);
    SealingHour reference = now(weather(23, 0.5, 25), sheet);
    assertThat(reference.skinHours()).isEqualTo(24, within(0.01));
    assertThat(reference.capHours()).isEqualTo(168, within(0.1));
    // Twice the water in the air, half the time: the model's own words.
    assertThat(now(weather(23, 1.0, 30), sheet).skinHours()).isEqualTo(12, within(0.01));
  }

  /** ISO 8502-4's 3 K above the dew point, with the dew point from a published chart: 70 °F at 65 % has 57 °F. */
  @Test
  void dewPointMargin() {
    double air = (70 - 32) / 1.8;
    double dew = (57 - 32) / 1.8;
    assertThat(now(weather(air, 0.65, dew), "{}").dewPointC()).isEqualTo(dew, within(0.5));
    assertThat(now(weather(air, 0.65, dew + 2.5), "{}").against().values()).allMatch(s -> s.contains(Hindrance.DEW));
    assertThat(now(weather(air, 0.65, dew + 3.5), "{}").against().values()).allMatch(Set::isEmpty);
  }

  /**
   * Dew points of a published chart for coatings, °F, rounded to whole degrees there: air, humidity, dew point.
   */
  @ParameterizedTest
  @CsvSource({"40, 90, 37", "50, 70, 40", "60, 50, 40", "70, 90, 67", "80, 65, 66", "90, 45, 64", "100, 30, 61", "110, 60, 92",
      "50, 85, 46"})
  void publishedChart(double fahrenheit, double percent, double dew) {
    assertThat(weather((fahrenheit - 32) / 1.8, percent / 100, 0).dewPointC() * 1.8 + 32).isEqualTo(dew, within(2.1));
  }

  @Test
  void tapeAndInSeamSealantHaveLimitsOfTheirOwn() {
    SealingHour cold = now(weather(8, 0.5, 4.5), "{}");
    assertThat(cold.against().get(SealantClass.TAPE)).containsExactly(Hindrance.COLD_METAL);
    assertThat(cold.against().get(SealantClass.IN_SEAM)).containsExactly(Hindrance.COLD_METAL);
    assertThat(cold.isOpen(SealantClass.BEAD)).isTrue();
    SealingHour hot = now(weather(30, 0.4, 65), "{}");
    assertThat(hot.isOpen(SealantClass.TAPE)).isTrue();
    assertThat(hot.against().get(SealantClass.BEAD)).containsExactly(Hindrance.HOT_METAL);
    assertThat(bead(weather(20, 0.9, 25), "{}")).containsExactly(Hindrance.HUMID);
    assertThat(bead(weather(20, Double.NaN, 25), "{}")).containsExactly(Hindrance.UNKNOWN);
  }

  /** Non-curing sealant forms no skin; one that releases solvent takes what is stated, in any air. */
  @Test
  void onlyMoistureCureFollowsTheAir() {
    assertThat(now(weather(10, 0.3, 15), "{\"sealant\": {\"cure\": \"none\"}}").skinHours()).isNaN();
    assertThat(now(weather(10, 0.3, 15), "{\"sealant\": {\"cure\": \"solvent-release\"}}").skinHours()).isEqualTo(1, within(1e-9));
    assertThat(now(weather(10, 0.5, 15), "{}").skinHours()).isEqualTo(Cure.timeFactor(10, .5), within(1e-9)).isEqualTo(2.19, within(.01));
  }

  /** ρ g b of a bead of 1/4 in and 1300 kg/m³: 81 Pa (by hand, Bingham's wall shear). */
  @ParameterizedTest
  @CsvSource({"0, NOT_STATED", "80, SLUMPS", "82, STANDS"})
  void slump(int yield, SealingWindows.Upright upright) {
    RoofSystem system = RoofSystem.parse("{\"sealant\": {\"yieldStress\": \"" + yield + " Pa\"}}", "s.json");
    assertThat(SealingWindows.of(WeatherSeries.constant(weather(20, .5, 20)), system).upright()).isEqualTo(upright);
  }

  private static WeatherHour rainy(int hour, double rain) {
    return new WeatherHour(4, 1, hour, 15, 0.5, Double.NaN, 0, Double.NaN, 1, 2, rain, Double.NaN);
  }

  /** Rain from 15 to 16: no seal then, and no bead in the time before in which it can't get its skin (1.6 times an hour at 15 °C). */
  @Test
  void rainWashesBeadsWithoutASkin() {
    List<WeatherHour> day = new ArrayList<>();
    for (int h = 0; h < 24; h++) {
      day.add(rainy(h, h == 15 ? 2 : 0));
    }
    SealingWindows windows = SealingWindows.of("t", false, day, RoofSystem.parse("{\"sealant\": {\"dewPointMargin\": \"0 K\"}}", "s.json"));
    assertThat(windows.hours().get(15).against().get(SealantClass.TAPE)).containsExactly(Hindrance.RAIN);
    assertThat(windows.hours().get(14).against().get(SealantClass.TAPE)).isEmpty();
    assertThat(windows.hours().get(14).against().get(SealantClass.BEAD)).containsExactly(Hindrance.RAIN_SOON);
    assertThat(windows.hours().get(13).against().get(SealantClass.BEAD)).isEmpty();
    assertThat(SealingWindows.windows(windows.hours().subList(0, 24), SealantClass.TAPE)).containsExactly(new SealingWindows.Window(0, 15),
        new SealingWindows.Window(16, 24));
    Set<SealantClass> both = EnumSet.of(SealantClass.TAPE, SealantClass.BEAD);
    assertThat(windows.open(both, 10.5)).isEqualTo(10.5);
    assertThat(windows.open(both, 14.2)).isEqualTo(16);
    // Behind the last hour nothing is known: nothing is in the way, and beads stand as long as usual.
    assertThat(windows.open(both, 30)).isEqualTo(30);
    assertThat(windows.covered(23.5, 24)).isEqualTo(47.5);
  }

  /** Each hour at its own pace: 12 h at 23 °C and 50 % and then air twice as moist give 24 h of pace after 12 + 6. */
  @Test
  void beadsStandThroughTheHoursAsTheyAre() {
    List<WeatherHour> hours = new ArrayList<>(Collections.nCopies(12, rain0(0.5)));
    hours.addAll(Collections.nCopies(48, rain0(1.0)));
    SealingWindows windows = SealingWindows.of("t", false, hours, RoofSystem.DEFAULT);
    assertThat(windows.hours().get(0).capHours()).isEqualTo(18, within(1e-6));
    assertThat(windows.hours().get(55).capHours()).isInfinite();
  }

  private static WeatherHour rain0(double humidity) {
    return new WeatherHour(4, 1, 0, 23, humidity, Double.NaN, 0, Double.NaN, 1, 2, 0, 30);
  }
}
