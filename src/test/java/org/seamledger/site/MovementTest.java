package org.seamledger.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.geometry.Vec3;

/** Movements in words and back. */
class MovementTest {

  /** A quarter anticlockwise takes (2, 1) to (−1, 2); then moved. */
  @Test
  void turnsBeforeItMoves() {
    assertThat(Movement.parse("10,20,3,90").transform().apply(new Vec3(2, 1, 0))).isEqualTo(new Vec3(9, 22, 3));
    assertThat(Movement.parse("0,0,0,0,0.5").transform().apply(new Vec3(2, 1, 4))).isEqualTo(new Vec3(1, 0.5, 2));
  }

  @ParameterizedTest
  @ValueSource(strings = {"12,-3.5,0", "0,0,3.125,90", "1.5,2,0,-33.25", "0,0,0,0,0.3048"})
  void whatItPrintsItReads(String text) {
    assertThat(Movement.parse(text).argument()).isEqualTo(text);
    assertThat(Movement.parse(Movement.parse(text).argument())).isEqualTo(Movement.parse(text));
  }

  @Test
  void saysItInWords() {
    assertThat(Movement.parse("12,-3.5,0,90").words()).isEqualTo("turned by 90° about its origin, moved by x +12 m, y -3.5 m, z 0 m");
    assertThat(Movement.NONE.words()).isEqualTo("where its own coordinates put it");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "1,2", "1,2,3,4,5,6", "a,2,3", "1,2,3,0,0", "1,2,3,0,-1", "1,,3", "NaN,0,0", "1,2,3,Infinity"})
  void refusesOtherTexts(String text) {
    assertThatThrownBy(() -> Movement.parse(text)).isInstanceOf(IllegalArgumentException.class);
  }
}
