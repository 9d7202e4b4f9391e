package org.seamledger.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Vec3;

/** Movements in words and back. */
class RigidTransformTest {

  /** A quarter anticlockwise takes (2, 1) to (−1, 2); then moved. */
  @Test
  void turnsBeforeItMoves() {
    assertThat(RigidTransform.parse("10,20,3,90").transform().apply(new Vec3(2, 1, 0))).isEqualTo(new Vec3(9, 22, 3));
    assertThat(RigidTransform.parse("0,0,0,0,0.5").transform().apply(new Vec3(2, 1, 4))).isEqualTo(new Vec3(1, 0.5, 2));
  }

  @ParameterizedTest
  @ValueSource(strings = {"12,-3.5,0", "0,0,3.125,90", "1.5,2,0,-33.25", "0,0,0,0,0.3048"})
  void whatItPrintsItReads(String text) {
    assertThat(RigidTransform.parse(text).argument()).isEqualTo(text);
    assertThat(RigidTransform.parse(RigidTransform.parse(text).argument())).isEqualTo(RigidTransform.parse(text));
  }

  @Test
  void saysItInWords() {
    assertThat(RigidTransform.parse("12,-3.5,0,90").words()).isEqualTo("turned by 90° about its origin, moved by x +12 m, y -3.5 m, z 0 m");
    assertThat(RigidTransform.NONE.words()).isEqualTo("where its own coordinates put it");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "1,2", "1,2,3,4,5,6", "a,2,3", "1,2,3,0,0", "1,2,3,0,-1", "1,,3", "NaN,0,0", "1,2,3,Infinity"})
  void refusesOtherTexts(String text) {
    assertThatThrownBy(() -> RigidTransform.parse(text)).isInstanceOf(IllegalArgumentException.class);
  }

  /**
   * 0.1 µm at the corners of a house of 20 m that lies 5,000 km from the origin: no more digits than that takes, and a plain movement stays
   * plain.
   */
  @Test
  void saysAsManyDigitsAsItTakes() {
    Box3 house = new Box3(450_000, 5_200_000, 88, 450_020, 5_200_012, 97);
    RigidTransform far = new RigidTransform(1, 17.123456789012, new Vec3(-123_456.7890123, 5_000_000.1234567, 3));
    RigidTransform read = RigidTransform.parse(far.tidied(house, 1e-7).argument());
    for (Vec3 p : new Vec3[] {new Vec3(450_000, 5_200_000, 88), new Vec3(450_020, 5_200_012, 97), new Vec3(450_020, 5_200_000, 88)}) {
      assertThat(read.transform().apply(p).distance(far.transform().apply(p))).isLessThan(1.1e-7);
    }
    RigidTransform near = new RigidTransform(1, 89.99999999999, new Vec3(12.00000004, -3.49999998, 1e-9));
    assertThat(near.tidied(new Box3(0, 0, 0, 20, 12, 9), 1e-7).argument()).isEqualTo("12,-3.5,0,90");
    assertThat(new RigidTransform(0.3048, 0, Vec3.ZERO).tidied(new Box3(0, 0, 0, 20, 12, 9), 1e-7).argument()).isEqualTo("0,0,0,0,0.3048");
  }
}
