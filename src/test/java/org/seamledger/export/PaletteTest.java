package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.detail.Details;
import org.seamledger.export.sheet.Palette;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.shacl.Rules;

/** The one colour code of page and sheets. */
class PaletteTest {

  /** WCAG 2.2, success criterion 1.4.11: graphical objects against adjacent colours. */
  private static final double LEAST_CONTRAST = 3;
  /** A difference in CIELAB (CIE 1976) of ten is seen at a glance; lines also differ in dashes or width. */
  private static final double LEAST_DIFFERENCE = 10;

  /** Colour vision deficiencies in full: Machado, Oliveira, Fernandes 2009, table of severity 1.0, in linear RGB. */
  private static final Map<String, double[][]> VISION = Map.of("usual", new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}, "protanopia",
      new double[][] {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}, "deuteranopia",
      new double[][] {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}, "tritanopia",
      new double[][] {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}});

  private static double[] linear(String colour) {
    double[] rgb = new double[3];
    for (int i = 0; i < 3; i++) {
      double c = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
      rgb[i] = c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }
    return rgb;
  }

  private static double luminance(double[] rgb) {
    return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
  }

  private static double contrast(String a, String b) {
    double x = luminance(linear(a)) + 0.05;
    double y = luminance(linear(b)) + 0.05;
    return Math.max(x, y) / Math.min(x, y);
  }

  private static double[] seen(String colour, double[][] vision) {
    double[] rgb = linear(colour);
    double[] out = new double[3];
    for (int i = 0; i < 3; i++) {
      out[i] = Math.max(0, Math.min(1, vision[i][0] * rgb[0] + vision[i][1] * rgb[1] + vision[i][2] * rgb[2]));
    }
    return out;
  }

  private static double[] lab(double[] rgb) {
    double x = f((0.4124 * rgb[0] + 0.3576 * rgb[1] + 0.1805 * rgb[2]) / 0.9505);
    double y = f(0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2]);
    double z = f((0.0193 * rgb[0] + 0.1192 * rgb[1] + 0.9505 * rgb[2]) / 1.089);
    return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
  }

  private static double f(double t) {
    return t > 0.008856 ? Math.cbrt(t) : 7.787 * t + 16.0 / 116;
  }

  private static double difference(double[] a, double[] b) {
    return Math.sqrt(Math.pow(a[0] - b[0], 2) + Math.pow(a[1] - b[1], 2) + Math.pow(a[2] - b[2], 2));
  }

  /** A value of a property in the page's style: the first is that of light, the second that of dark ground. */
  private static String ground(String property, int nth) throws IOException {
    Matcher m = Pattern.compile("--" + property + ": (#\\w{6})").matcher(Files.readString(Path.of("web/css/base.css")));
    for (int i = 0; i <= nth; i++) {
      assertThat(m.find()).isTrue();
    }
    return m.group(1);
  }

  @Test
  void everyColourStandsOutFromItsGround() throws IOException {
    for (Palette.Entry e : Palette.seals()) {
      for (String light : List.of("#ffffff", "#f0f3f5", "#e3eaee", ground("sheet", 0))) {
        assertThat(contrast(e.light(), light)).as(e.id() + " on " + light).isGreaterThanOrEqualTo(LEAST_CONTRAST);
      }
      assertThat(contrast(e.dark(), ground("sheet", 1))).as(e.id() + " on dark").isGreaterThanOrEqualTo(LEAST_CONTRAST);
    }
  }

  @Test
  void everyTwoColoursDifferForEveryEye() {
    VISION.forEach((name, vision) -> {
      for (Palette.Entry a : Palette.seals()) {
        for (Palette.Entry b : Palette.seals()) {
          if (!a.id().equals(b.id())) {
            assertThat(difference(lab(seen(a.light(), vision)), lab(seen(b.light(), vision)))).as(name + ": " + a.id() + ", " + b.id())
                .isGreaterThan(LEAST_DIFFERENCE);
            assertThat(difference(lab(seen(a.dark(), vision)), lab(seen(b.dark(), vision)))).as(name + ": " + a.id() + ", " + b.id())
                .isGreaterThan(LEAST_DIFFERENCE);
          }
        }
      }
    });
  }

  @Test
  void everyTwoDifferInDashesOrWidth() {
    TreeSet<String> looks = new TreeSet<>();
    Palette.seals().forEach(e -> looks.add(e.dashMm() + " / " + e.widthMm()));
    assertThat(looks).hasSameSizeAs(Palette.seals());
  }

  /** The page takes its colours from the file that the sheets take theirs from, and has none of its own. */
  @Test
  void pageAndSheetsReadOneFile() throws IOException {
    String page = Files.readString(Path.of("web/js/ledger/marks.js"));
    assertThat(page).contains("palette.json").doesNotContainPattern("#[0-9a-fA-F]{6}");
    String file = Files.readString(Path.of("web/palette.json"));
    String section = SectionDrawing.svg(DetailScenes.of(new Details(Rules.packaged()).book().get("headwall-reglet"), RoofSystem.DEFAULT),
        DetailScenes.ID, SheetSetup.DEFAULT);
    String plan = PlanDrawing
        .sheets(DetailScenes.of(new Details(Rules.packaged()).book().get("headwall-reglet"), RoofSystem.DEFAULT), SheetSetup.DEFAULT)
        .get(0);
    for (Palette.Entry e : Palette.seals()) {
      assertThat(file).contains(e.light(), e.dark());
      assertThat(plan).contains(".seal-" + e.id() + " { fill: none; stroke: " + e.light());
    }
    for (String seal : List.of("tape", "bead", "exposed", "in-seam")) {
      assertThat(section).contains(Palette.light(seal));
    }
  }
}
