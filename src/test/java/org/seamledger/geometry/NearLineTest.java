package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where a sheet lies beside a line; expected places by hand, for the oblique sheet from the right-angled triangle beside it. */
class NearLineTest {

  private static final Vec3 A = new Vec3(0, 0, 0);
  private static final Vec3 B = new Vec3(10, 0, 0);

  private static Mesh sheet(Vec3... corners) {
    MeshBuilder mesh = new MeshBuilder();
    mesh.face(List.of(corners), List.of());
    return mesh.build();
  }

  private static Mesh strip(double x0, double x1, double y, double z) {
    return sheet(new Vec3(x0, y, z), new Vec3(x1, y, z), new Vec3(x1, y + 0.1, z), new Vec3(x0, y + 0.1, z));
  }

  @ParameterizedTest
  @CsvSource({"2, 5, 2, 5", "-1, 3, 0, 3", "8, 12, 8, 10", "-1, 11, 0, 10"})
  void aParallelSheetCountsAlongItsOwnLength(double x0, double x1, double begin, double end) {
    List<NearLine.Stretch> found = NearLine.of(strip(x0, x1, 0.05, 0.05), A, B, 0.15);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).begin()).isCloseTo(begin, within(1e-9));
    assertThat(found.get(0).end()).isCloseTo(end, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"0.151, 0", "0, 0.151", "-0.3, 0", "0.12, 0.12"})
  void whatIsFartherThanTheReachDoesNotCount(double y, double z) {
    assertThat(NearLine.of(strip(2, 5, y, z), A, B, 0.15)).isEmpty();
  }

  /** A wide sheet that dives across the line at 45°: |x − 5| = |z|, so it leaves a reach of 0.15 after 0.15 along the line. */
  @Test
  void aSheetAcrossTheLineCountsWithinReachOnly() {
    Mesh sheet = sheet(new Vec3(3, -2, -2), new Vec3(7, -2, 2), new Vec3(7, 2, 2), new Vec3(3, 2, -2));
    List<NearLine.Stretch> found = NearLine.of(sheet, A, B, 0.15);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).begin()).isCloseTo(4.85, within(1e-9));
    assertThat(found.get(0).end()).isCloseTo(5.15, within(1e-9));
  }

  @Test
  void lengthsOfSheetWithAJointCountAsOneAndWithAGapAsTwo() {
    assertThat(NearLine.of(new Solid.Union(List.of(strip(1, 3, 0, 0), strip(3.004, 5, 0, 0))), A, B, 0.15)).hasSize(1);
    assertThat(NearLine.of(new Solid.Union(List.of(strip(1, 3, 0, 0), strip(3.1, 5, 0, 0))), A, B, 0.15)).hasSize(2)
        .extracting(NearLine.Stretch::length).allSatisfy(m -> assertThat(m).isBetween(1.89, 2.01));
  }

  @Test
  void aLineOfNoLengthHasNothingBesideIt() {
    assertThat(NearLine.of(strip(-1, 1, 0, 0), A, A, 0.15)).isEmpty();
  }
}
