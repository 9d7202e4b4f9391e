package org.seamledger.quantity.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OpenChannelTest {

  private static final double GPM = 6.30902e-5;
  private static final double FT = 0.3048;
  private static final double IN = 0.0254;

  @ParameterizedTest
  @CsvSource({"6, 1.6, 32.91", "5, 0.8, 9.548"})
  void manningsEquation(double width, double depth, double flow) {
    // Worked problems of a hydraulics course (jon.sdsu.edu, CIVE 530): n 0.015, S 0.0025.
    assertThat(OpenChannel.rectangularFlow(width, depth, 0.015, 0.0025)).isCloseTo(flow, withinPercentage(0.05));
    assertThat(OpenChannel.rectangularDepth(flow, width, 0.015, 0.0025)).isCloseTo(depth, withinPercentage(0.05));
  }

  @ParameterizedTest
  @CsvSource({"3, 170", "4, 360", "5, 625", "6, 960"})
  void gutters(double inches, double squareFeet) {
    // A published table of half-round gutters at 1/16 in a foot, roof area at 4 in/h.
    double flow = squareFeet * FT * FT * 4 * IN / 3600;
    assertThat(OpenChannel.gutterDiameter(flow * 0.999) / IN).isCloseTo(inches, offset(1e-9));
    assertThat(OpenChannel.gutterDiameter(flow * 1.001) / IN).isGreaterThan(inches);
    // What the table allows is less than Manning's equation gives for a full half circle with n 0.012: A = πd²/8, R = d/4.
    double d = inches * IN;
    double full = Math.PI * d * d / 8 * Math.pow(d / 4, 2.0 / 3) * Math.sqrt(1 / 192.0) / 0.012;
    assertThat(flow).isLessThan(full);
    assertThat(OpenChannel.gutterDiameter(1)).isNaN();
  }

  @Test
  void openings() {
    // 6 by 4 in, water 5 in over the sill: 3 in over the middle; 180.0 gpm, and 6 in: 207.9 gpm (derived; coefficient 0.6 from memory).
    assertThat(OpenChannel.orificeFlow(24 * IN * IN, 3 * IN) / GPM).isCloseTo(180.0, offset(0.1));
    assertThat(OpenChannel.orificeFlow(24 * IN * IN, 4 * IN) / GPM).isCloseTo(207.9, offset(0.1));
    // Shallow water enters a round hole as over a weir of its circumference: 3.33 · π/3 · (1/12)^1.5 ft³/s over 4 in, 1 in deep.
    double weir = 3.33 * Math.PI / 3 * Math.pow(1 / 12.0, 1.5) * FT * FT * FT;
    assertThat(OpenChannel.outletHead(weir, 4 * IN) / IN).isCloseTo(1, offset(1e-6));
    // Deep water as through an orifice.
    double orifice = OpenChannel.orificeFlow(Math.PI / 4 * 4 * IN * IN, 1);
    assertThat(OpenChannel.outletHead(orifice, 2 * IN)).isCloseTo(1, offset(1e-6));
  }

  @Test
  void channelAlongAWall() {
    // A reviewer's figure: 3.29 l/s in a channel 4 in wide at 1:200 are about 60 mm deep.
    assertThat(OpenChannel.rectangularDepth(3.29e-3, 4 * IN, 0.012, 1.0 / 200)).isCloseTo(0.060, offset(0.005));
    assertThat(OpenChannel.rectangularDepth(0, 0.1, 0.012, 1.0 / 200)).isCloseTo(0, offset(1e-6));
  }

  @ParameterizedTest
  @CsvSource({"2, 23", "3, 67", "4, 144", "5, 261", "6, 424", "8, 913", "10, 1655", "12, 2692", "15, 4880"})
  void leaders(double inches, double gpm) {
    // National Standard Plumbing Code 2006, table 13.6.1.
    assertThat(OpenChannel.leaderFlow(inches * IN) / GPM).isCloseTo(gpm, offset(0.7));
    assertThat(OpenChannel.leaderDiameter((gpm - 1) * GPM) / IN).isCloseTo(inches, offset(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"1, 1, 35.4", "3, 0.5, 38.2", "3, 1, 108", "5, 2, 506", "3, 3, 552", "5, 3, 926"})
  void weirs(double feet, double inches, double gpm) {
    // A published table of weirs with contracted ends, feet, inches of head, gallons a minute; it rounds to some 2 %.
    assertThat(OpenChannel.weirLength(gpm * GPM, inches * IN) / FT).isCloseTo(feet, withinPercentage(2));
  }
}
