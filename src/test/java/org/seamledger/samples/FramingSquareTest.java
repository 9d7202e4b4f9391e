package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamledger.samples.Pitch.per12;
import static org.seamledger.samples.Units.feet;

import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Roofs of every pitch of a framing square's rafter table: rakes give the column "length of common rafters per foot run", hips and valleys
 * the column "length of hip or valley rafters per foot run", to the table's two decimals. The common column is printed in rafter tables of
 * US training manuals and carpentry textbooks (NAVEDTRA 14044); the hip column from memory, checked with √(288 + r²).
 */
@Tag("slow")
class FramingSquareTest {

  private static final double RUN_FEET = 12;

  @ParameterizedTest(name = "{0}:12")
  @CsvSource({
      "2, 12.17, 17.09", "3, 12.37, 17.23", "4, 12.65, 17.44", "5, 13.00, 17.69", "6, 13.42, 18.00", "7, 13.89, 18.36", "8, 14.42, 18.76",
      "9, 15.00, 19.21", "10, 15.62, 19.70", "11, 16.28, 20.22", "12, 16.97, 20.78", "13, 17.69, 21.38", "14, 18.44, 22.00",
      "15, 19.21, 22.65", "16, 20.00, 23.32", "17, 20.81, 24.02", "18, 21.63, 24.74"})
  void rafterLengthsPerFootOfRun(int rise, String common, String hipOrValley) {
    Form form = Form.PLAIN.in(rise % 2 == 0 ? Form.Unit.INCH : Form.Unit.FOOT);
    Pitch pitch = per12(rise);
    House gable = Roofs.gable(feet(2 * RUN_FEET), feet(30), pitch);
    assertThat(inchesPerFootOfRun(gable, form, "rake")).isEqualTo(common);
    House hip = Roofs.hip(feet(2 * RUN_FEET), feet(40), pitch);
    assertThat(inchesPerFootOfRun(hip, form, "hip")).isEqualTo(hipOrValley);
    House ell = JoinedRoofs.ell(feet(50), feet(45), feet(2 * RUN_FEET), pitch);
    assertThat(inchesPerFootOfRun(ell, form, "valley")).isEqualTo(hipOrValley);
    assertThat(inchesPerFootOfRun(ell, form, "hip")).isEqualTo(hipOrValley);
  }

  private static String inchesPerFootOfRun(House house, Form form, String kind) {
    var lengths = Comparison.byKind(Pipeline.lines(house, form)).get(kind);
    assertThat(lengths).as(kind).isNotEmpty();
    double first = lengths.get(0);
    lengths.forEach(l -> assertThat(l).isCloseTo(first, within(1e-6)));
    return String.format(Locale.ROOT, "%.2f", first / 0.0254 / RUN_FEET);
  }
}
