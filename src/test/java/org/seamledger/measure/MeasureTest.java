package org.seamledger.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasureTest {

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "3/16 in | 47625/10000000", "1 1/2 in | 381/10000", "1-1/2 in | 381/10000", "1½ in | 381/10000", "16 in | 4064/10000",
      "406 mm | 406/1000", "10 ft 3 in | 31242/10000", "10' 3\" | 31242/10000", "9'-6\" | 28956/10000", "10ft3in | 31242/10000",
      "50 ft | 1524/100", "0.25 in | 635/100000", ".25in | 635/100000", "12 m | 12", "5 ft 3 1/8 in | 1603375/1000000", "38 MM | 38/1000"})
  void lengthsAreExact(String text, String metres) {
    assertThat(Measure.length(text).si()).isEqualTo(fraction(metres));
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      // 1 US gallon = 231 in³ = 128 fl oz by definition (NIST Handbook 44, units tables: 1 fl oz = 1.805 in³ = 29.57 ml).
      "10.1 fl oz | 298.69 | 18.2273", "20 fl oz | 591.47 | 36.094", "10.3 fl oz | 304.61 | 18.588", "300 ml | 300.00 | 18.307"})
  void cartridges(String text, double ml, double cubicInches) {
    assertThat(Measure.volume(text).in(Unit.MILLILITRE)).isEqualTo(ml, within(0.005));
    assertThat(Measure.volume(text).in(Unit.CUBIC_INCH)).isEqualTo(cubicInches, within(0.0005));
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      // Slope table of rise per foot: degrees = atan(r/12), percent = 100 r/12 (framing-square table).
      "3:12 | 14.036", "25 % | 14.036", "14.04 deg | 14.04", "14.04° | 14.04", "6:12 | 26.565", "1:48 | 1.193", "1/4:12 | 1.193",
      "100% | 45.0", "1/2:12 | 2.386"})
  void slopes(String text, double degrees) {
    assertThat(Measure.slope(text).degrees()).isEqualTo(degrees, within(0.0005));
  }

  @Test
  void ratioAndPercentAreTheSameExactSlope() {
    assertThat(Measure.slope("3:12").si()).isEqualTo(Measure.slope("25 %").si()).isEqualTo(Fraction.of(1, 4));
  }

  @Test
  void aDifferenceIsNotAReading() {
    // A design range of 200 °F is 111.1 K; the thermometer's 200 °F is 93.3 °C. Documents have printed one for the other.
    assertThat(Measure.temperatureDifference("200 °F").value()).isEqualTo(111.111, within(0.0005));
    assertThat(Measure.temperature("200 °F").in(Unit.CELSIUS)).isEqualTo(93.333, within(0.0005));
    assertThat(Measure.temperature("-40 °C").in(Unit.FAHRENHEIT)).isEqualTo(-40, within(1e-12));
    assertThat(Measure.temperature("32 F").exactIn(Unit.CELSIUS)).isEqualTo(Fraction.ZERO);
  }

  @Test
  void derivedFactors() {
    // NIST SP 811, appendix B.8 (from memory): 1 psf = 47.88026 Pa, 1 psi = 6894.757 Pa, 1 in/h = 7.05556e-6 m/s, 1 mph = 0.44704 m/s.
    assertThat(Unit.POUND_PER_SQUARE_FOOT.toSi(1.0)).isEqualTo(47.88026, within(5e-6));
    assertThat(Unit.POUND_PER_SQUARE_INCH.toSi(1.0)).isEqualTo(6894.757, within(5e-4));
    assertThat(Unit.INCH_PER_HOUR.toSi(1.0)).isEqualTo(7.05556e-6, within(5e-12));
    assertThat(Unit.MILE_PER_HOUR.toSi(1.0)).isEqualTo(0.44704);
    assertThat(Unit.US_GALLON.toSi(1.0)).isEqualTo(128 * Unit.US_FLUID_OUNCE.toSi(1.0), within(1e-15));
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "16 | no unit | 3", "16 kg | the unit \"kg\" | 4", "1/0 in | a denominator of zero | 3", "x in | \"x in\" | 1",
      "3 in 4 ft | \"ft\" after \"in\" | 8", "16 in wide | \"wide\" | 7", "-2 in | a negative value | 1", "3:12 | \":\" | 2",
      "3/ in | no denominator | 3", "' ' | nothing | 2", "1,5 m | the unit \"\" | 0", "NaN m | \"NaN m\" | 1"})
  void badLengthsSayWhatAndWhere(String text, String found, int position) {
    assertThatThrownBy(() -> Measure.length(text)).isInstanceOfSatisfying(MeasureFormatException.class, e -> {
      assertThat(e.expected()).contains("a length such as \"16 in\"").contains("mm");
      if (position > 0) {
        assertThat(e.found()).isEqualTo(found);
        assertThat(e.position()).isEqualTo(position);
      }
    });
  }

  @Test
  void badSlopesAndTemperatures() {
    assertThatThrownBy(() -> Measure.slope("3:0")).hasMessageContaining("a run of 0");
    assertThatThrownBy(() -> Measure.slope("90 deg")).hasMessageContaining("an angle of 90.0 degrees");
    assertThatThrownBy(() -> Measure.slope("3")).hasMessageContaining("no unit").hasMessageContaining("3:12");
    assertThatThrownBy(() -> Measure.temperature("-500 °F")).hasMessageContaining("below absolute zero");
    assertThatThrownBy(() -> Measure.length(null)).hasMessageContaining("nothing");
    assertThatThrownBy(() -> Measure.length("9".repeat(500) + " m")).hasMessageContaining("502 characters");
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "12.192 | 40 ft 0 in", "4.0894 | 13 ft 5 in", "0.0381 | 1 1/2 in", "0.0015875 | 1/16 in", "0 | 0 in", "0.30479 | 1 ft 0 in",
      "-0.6 | -1 ft 11 5/8 in", "4.76113 | 15 ft 7 7/16 in"})
  void feetAndInches(double metres, String text) {
    assertThat(MeasureFormat.formatFeetInches(metres)).isEqualTo(text);
  }

  @Test
  void otherFormats() {
    assertThat(MeasureFormat.formatInches(0.7935214)).isEqualTo("31 1/4 in");
    assertThat(MeasureFormat.formatInches(0.0127)).isEqualTo("1/2 in");
    assertThat(MeasureFormat.formatMillimetres(0.4064)).isEqualTo("406 mm");
    assertThat(MeasureFormat.formatBoth(12.192)).isEqualTo("12.192 m (40 ft 0 in)");
    assertThat(MeasureFormat.formatSlope(26.56505)).isEqualTo("6:12 (26.57°)");
    assertThat(MeasureFormat.fixed(-0.0001, 2)).isEqualTo("0.00");
    assertThat(MeasureFormat.fixed(2.675, 2)).isEqualTo("2.68");
    assertThat(Measure.of(Fraction.of(3, 16), Unit.INCH).text()).isEqualTo("3/16 in");
    assertThat(Measure.of(Fraction.of(101, 10), Unit.US_FLUID_OUNCE).text()).isEqualTo("10.1 fl oz");
  }

  @Test
  void whatIsWrittenIsReadAgain() {
    long seed = 20260101;
    Random random = new Random(seed);
    for (int i = 0; i < 500; i++) {
      Fraction sixteenths = Fraction.of(random.nextInt(20000), 16);
      double metres = Unit.INCH.toSi(sixteenths).toDouble();
      for (String text : new String[] {MeasureFormat.formatFeetInches(metres), MeasureFormat.formatInches(metres)}) {
        assertThat(Measure.length(text).exactIn(Unit.INCH)).as("seed %d, %s", seed, text).isEqualTo(sixteenths);
      }
    }
  }

  private static Fraction fraction(String text) {
    String[] parts = text.split("/");
    return parts.length == 1 ? Fraction.of(Long.parseLong(text)) : Fraction.of(Long.parseLong(parts[0]), Long.parseLong(parts[1]));
  }

  /** Against the decimals of the library, which are exact. */
  @Test
  void placesAreThoseOfTheDecimal() {
    Random random = new Random(20_261_129);
    for (int i = 0; i < 300_000; i++) {
      double scale = Math.pow(10, random.nextInt(16) - 7);
      double value = switch (i % 4) {
        case 0 -> (random.nextDouble() - 0.5) * scale;
        case 1 -> Math.rint(random.nextDouble() * 1e6) * 5 * Math.pow(10, -random.nextInt(9));
        case 2 -> (random.nextInt(2_000_001) - 1_000_000) / 1e6 + 0.5e-6;
        default -> random.nextInt(2000) * 0.0254 / 16 - 1;
      };
      int places = random.nextInt(7);
      BigDecimal d = new BigDecimal(Double.toString(value)).setScale(places, RoundingMode.HALF_UP);
      assertThat(MeasureFormat.plain(value, places)).as("%s to %d", value, places)
          .isEqualTo(d.signum() == 0 ? "0" : d.stripTrailingZeros().toPlainString());
    }
  }

  @Test
  void aFractionIsTheNearestDouble() {
    Random random = new Random(7);
    for (int i = 0; i < 50_000; i++) {
      long n = random.nextLong() >> random.nextInt(63);
      long d = 1 + (random.nextLong() >>> 1 + random.nextInt(62));
      assertThat(Fraction.of(n, d).toDouble())
          .isEqualTo(new BigDecimal(n).divide(new BigDecimal(d), MathContext.DECIMAL128).doubleValue());
    }
  }
}
