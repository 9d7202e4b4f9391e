package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

class JunctionReportTest {

  private static String text(String id) throws IOException {
    Takeoff takeoff = Takeoffs.boatHouse();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    JunctionReport.write(takeoff, takeoff.junctions().stream().filter(j -> j.junction().id().equals(id)).findFirst().orElseThrow(), out);
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void namesTheShapeThatIsMet() throws IOException {
    assertThat(text("ridge1")).startsWith("ridge1, ridge: convex and level").contains("It meets the shape ridge.")
        .contains("10.000 m (32 ft 9 11/16 in)").containsPattern("foldDegrees +53\\.130102").contains("x 450000.000  y 5100000.000");
  }

  @Test
  void namesTheNearestShapeThatIsMissedAndWhy() throws IOException {
    assertThat(text("rake1")).contains("No kind shape is met.").contains("nearest shape that it misses is rake:")
        .contains("- obliquityDegrees is 12.25 and must be at most 5").contains("kind/unclassified");
  }
}
