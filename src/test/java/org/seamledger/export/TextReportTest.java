package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

class TextReportTest {

  private static String text(Takeoff takeoff) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    TextReport.write(takeoff, out);
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void saysWhatItReadAndWhatItFound() throws IOException {
    String text = text(Takeoffs.boatHouse());
    assertThat(text).contains("boat-house.ifc").contains("IFC4, lengths in millimetre, written by Pencil 1")
        .contains("26.57°").contains("6.00:12").contains("south 180°").contains("north 0°");
    // 10 m and 2 × 4.472 m; 24.4721 m are 80 ft 3.47 in, 3 1/2 to the nearest sixteenth.
    assertThat(text).containsPattern("ridge +1 +10\\.000 +32 ft 9 11/16 in +convex and level")
        .containsPattern("all +3 +24\\.472 +80 ft 3 1/2 in");
    assertThat(text).contains("warning  kind/unclassified").contains("no shape claims this line [rake1]")
        .contains("What to do: No shape, or more than one,")
        .contains("Why: water may stand");
  }

  @Test
  void listsTheOrder() throws IOException {
    String text = text(Takeoffs.boatHouse());
    assertThat(text).containsPattern("sealing tape +40\\.000 m +3 roll +3/16 in × 7/8 in")
        .containsPattern("screw[a-z ]* +198 +1 box").containsPattern("ridge cap +10\\.000 m +4 length").contains("cap edge 198")
        .contains("along 100.0 % of the").contains("10.000 of 10.000 m").contains("ridge, detail ridge-by-hand");
  }

  @Test
  void fitsThePageWithNoBlanksAtLineEnds() throws IOException {
    String text = text(Takeoffs.boatHouse("a name that goes on and on ".repeat(10)));
    assertThat(text.lines()).allMatch(line -> line.codePointCount(0, line.length()) <= 100).noneMatch(line -> line.endsWith(" "));
  }

  @Test
  void showsCautionsAndScope() throws IOException {
    assertThat(text(Takeoffs.boatHouse())).contains("fall hazards").contains("Verify on site").contains("govern");
  }

  @Test
  void aNameCannotSteerTheTerminal() throws IOException {
    assertThat(text(Takeoffs.boatHouse("ro\u001b[31mof\nX\u202Ey"))).contains("ro [31mof X y").doesNotContain("\u001b");
  }
}
