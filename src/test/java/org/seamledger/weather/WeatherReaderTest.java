package org.seamledger.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Weather files: the EPW form of EnergyPlus (its data dictionary's order of cells), and tables of hours. */
class WeatherReaderTest {

  private static final String HEAD = "LOCATION,Vellinghow,-,-,own,0,51.0,0.0,0.0,40.0\nDESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\n"
      + "GROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,own\nCOMMENTS 2,\n"
      + "DATA PERIODS,1,1,Data,Sunday,1/ 1,12/31\n";

  /** Two rows of a public typical year: dew points as its authors computed them from temperature and humidity. */
  private static final String END = ",99,99,9999,99999,9,999999999,999,.999,999,99,999,";
  private static final String ROWS = "2005,1,1,1,0,?,1.08,-0.28,90.90,99109.84,0,0,9999,0,0,0,999999,999999,999999,9999,231,1.20" + END
      + "999,99\n2005,1,1,13,0,?,5.58,-1.21,61.65,99032.18,0,0,310,346,0,0,999999,999999,999999,9999,10,0.80"
      + END.replace(",99,99,9999,", ",5,99,9999,") + "0.4,99\n";

  @Test
  void epw() {
    WeatherSeries series = WeatherSeries.parse(HEAD + ROWS, "t.epw");
    assertThat(series.hours()).hasSize(2);
    WeatherHour night = series.hours().get(0);
    // The hour 1 is the one that ends at 01:00.
    assertThat(night.label()).isEqualTo("01-01 00:00");
    assertThat(night.dewPointC()).isEqualTo(-0.28, within(0.05));
    assertThat(night.skyWm2()).isNaN();
    assertThat(night.rainMm()).isNaN();
    WeatherHour noon = series.hours().get(1);
    assertThat(noon.label()).isEqualTo("01-01 12:00");
    assertThat(noon.dewPointC()).isEqualTo(-1.21, within(0.02));
    assertThat(noon.pressurePa()).isEqualTo(99032.18);
    assertThat(noon.sunWm2()).isEqualTo(346);
    assertThat(noon.skyWm2()).isEqualTo(310);
    assertThat(noon.windMs()).isEqualTo(0.8);
    assertThat(noon.cloud()).isEqualTo(0.5);
    assertThat(noon.rainMm()).isEqualTo(0.4);
  }

  @Test
  void whatIsMissingInAnEpwIsNotKnown() {
    String row = ROWS.lines().findFirst().orElseThrow().replace("1.08,-0.28,90.90", "1.08,-0.28,999");
    assertThat(WeatherSeries.parse(HEAD + row, "t.epw").hours().get(0).humidity()).isEqualTo(0.909, within(4e-3));
    String none = row.replace("1.08,-0.28,999", "99.9,99.9,999");
    assertThat(WeatherSeries.parse(HEAD + none, "t.epw").hours().get(0).isKnown()).isFalse();
  }

  @Test
  void table() {
    WeatherSeries series = WeatherSeries.parse(
        "time, air_F ,humidity_%,wind_mph,rain_in,cloud_%,dewpoint_C\r\n"
            + "2026-03-14T23:00,50,80,10,0.1,25,\r\n2026-03-15 00:00,32,,,,,-2\r\n",
        "t.csv");
    WeatherHour first = series.hours().get(0);
    assertThat(first.label()).isEqualTo("03-14 23:00");
    assertThat(first.airC()).isEqualTo(10, within(1e-9));
    assertThat(first.humidity()).isEqualTo(0.8, within(1e-9));
    assertThat(first.windMs()).isEqualTo(4.4704, within(1e-9));
    assertThat(first.rainMm()).isEqualTo(2.54, within(1e-9));
    WeatherHour second = series.hours().get(1);
    assertThat(second.dewPointC()).isEqualTo(-2, within(1e-6));
    assertThat(second.sunWm2()).isNaN();
    assertThat(series.from(3, 15)).hasSize(2).first().isEqualTo(second);
    assertThat(series.from(3, 16)).isEmpty();
  }

  /** Each mistake with its place, expected and found. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "time,air_C\\n| line 1, column 1: expected columns air_C or air_F, and humidity_% or dewpoint_C or dewpoint_F",
      "time,air_C,humidity_%,snow\\n| line 1, column 23: expected one of the columns air_c, air_f",
      "time,air_C,humidity_%\\n| line 2, column 1: expected an hour a line, found the end of the file",
      "time,air_C,humidity_%\\n2026-01-01T00:00,abc,5\\n| line 2, column 18: expected °C from -90 to 130, found \"abc\"",
      "time,air_C,humidity_%\\n2026-01-01T00:00,5,101\\n| line 2, column 20: expected relative humidity in % from 0 to 100, found \"101\"",
      "time,air_C,humidity_%\\n2026-01-01T00:00,5,50\\n2026-01-01T02:00,5,50\\n| line 3, column 1: expected the next hour, 2026-01-01T01",
      "time,air_C,humidity_%\\n1.1.2026,5,50\\n| line 2, column 1: expected a date and a time such as 2026-03-14T08:00, found \"1.1.2026\"",
      "time,air_C,humidity_%\\n2026-01-01T00:30,5,50\\n| line 2, column 1: expected the beginning of an hour",
      "time,air_C,humidity_%\\n2026-01-01T00:00,5,50,9\\n| line 2, column 23: expected at most 3 cells",
      "hello| line 1, column 1: expected LOCATION as an EPW file begins, or a head line that begins with time, found \"hello\"",
      "LOCATION,x\\n| line 2, column 1: expected rows of hours after 8 lines of head, found the end of the file"})
  void mistakes(String text, String message) {
    assertThatThrownBy(() -> WeatherSeries.parse(text.replace("\\n", "\n"), "w.csv")).isInstanceOf(WeatherFormatException.class)
        .hasMessageStartingWith("w.csv: " + message.strip());
  }

  @Test
  void mistakesInAnEpw() {
    assertThatThrownBy(() -> WeatherSeries.parse(HEAD + "1,2,3", "t.epw"))
        .hasMessage("t.epw: line 9, column 6: expected a row of 35 cells, found 3 cells");
    assertThatThrownBy(() -> WeatherSeries.parse(HEAD + ROWS.replace("90.90", "wet"), "t.epw"))
        .hasMessage("t.epw: line 9, column 27: expected relative humidity in % from 0 to 110, found \"wet\"");
    assertThatThrownBy(() -> WeatherSeries.parse("", "t.epw")).hasMessageContaining("line 1, column 1")
        .hasMessageContaining("found nothing");
  }

  @Test
  void byHand() {
    WeatherHour now = WeatherWords.read(Map.of("air", "12C", "humidity", "80", "sun", "hazy", "wind", "5 mph"));
    assertThat(now.dewPointC()).isEqualTo(8.66, within(0.02));
    assertThat(now.sunWm2()).isEqualTo(500);
    assertThat(now.windMs()).isEqualTo(2.2352, within(1e-9));
    assertThat(WeatherWords.read(Map.of("air", "54F", "humidity", "80%", "sun", "640", "metal", "31 C")).metalC()).isEqualTo(31,
        within(1e-9));
    assertThatThrownBy(() -> WeatherWords.read(Map.of("air", "12C"))).hasMessageContaining("needs air and humidity");
    assertThatThrownBy(() -> WeatherWords.read(Map.of("air", "12C", "humidity", "wet"))).hasMessageStartingWith("humidity is a relative");
    assertThatThrownBy(() -> WeatherWords.read(Map.of("air", "12C", "humidity", "50", "sun", "sunny")))
        .hasMessage("sun is none, overcast, hazy, full or W/m² from 0 to 1500, not \"sunny\"");
    assertThatThrownBy(() -> WeatherWords.read(Map.of("air", "500C", "humidity", "50"))).hasMessageStartingWith("air is a temperature");
  }

  /** The demo weather is read, and its first morning is what it was made for: clear, cold, metal below the dew point. */
  @Test
  void theDemoFile() throws IOException {
    WeatherSeries series = WeatherSeries.parse(Files.readString(Path.of("ifc-samples", "weather.csv")), "weather.csv");
    assertThat(series.hours()).hasSize(120);
    assertThat(new MetalSurface(0.7, 0.85).temperatureC(series.hours().get(4), 0)).isLessThan(series.hours().get(4).dewPointC());
  }
}
