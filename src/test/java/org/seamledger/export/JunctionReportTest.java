package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

class JunctionReportTest {

  private static String text(String id) throws IOException {
    Takeoff takeoff = Takeoffs.boatHouse();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    DetailedJunction junction =
        takeoff.detailed().stream().filter(j -> j.junction().junction().id().equals(id)).findFirst().orElseThrow();
    JunctionReport.write(takeoff, junction, junction.junction().explanation(), out);
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void namesTheShapeThatIsMet() throws IOException {
    assertThat(text("ridge1")).startsWith("ridge1, ridge: convex and level").contains("It meets the shape ridge.")
        .contains("10.000 m (32 ft 9 11/16 in)").containsPattern("foldDegrees +53\\.130102").contains("x 450000.000  y 5100000.000");
  }

  /** 10 m are 393.7 in: two lines on two faces are 40 m of tape, a line of fasteners is ceil((393.7 - 2)/4) + 1 = 99 a face. */
  @Test
  void showsWhatTheDetailTakes() throws IOException {
    assertThat(text("ridge1")).contains("Detail ridge-by-hand").contains("Without any sealant: the cap laps over both faces")
        .containsPattern("tape +F1 +2 lines +20\\.000 m +primary +under the cap")
        .containsPattern("fasteners +F2 +99 +≤ 102 mm \\(4 in\\) +cap edge").contains("- before the cap is set: tape without a gap");
    assertThat(text("eave1")).doesNotContain("Detail");
  }

  @Test
  void namesTheNearestShapeThatIsMissedAndWhy() throws IOException {
    assertThat(text("rake1")).contains("No kind shape is met.").contains("nearest shape that it misses is rake:")
        .contains("- obliquityDegrees is 12.25 and must be at most 5").contains("kind/unclassified");
  }
}
