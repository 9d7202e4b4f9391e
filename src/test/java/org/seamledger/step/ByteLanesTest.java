package org.seamledger.step;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.function.LongUnaryOperator;
import org.junit.jupiter.api.Test;

/** Eight bytes at once against one after another. */
class ByteLanesTest {

  @Test
  void everyTestPointsToTheFirstByteThatMeetsIt() {
    check(ByteLanes::apostrophe, b -> b == '\'');
    check(ByteLanes::parenthesis, b -> b == '(');
    check(ByteLanes::stop, b -> {
      int low = b & 0x7F;
      return low == '\'' || low == '/' || low >= ':' && low <= '?';
    });
  }

  private static void check(LongUnaryOperator test, IntPredicate meets) {
    long seed = 7;
    Random random = new Random(seed);
    byte[] bytes = new byte[8];
    for (int i = 0; i < 200_000; i++) {
      random.nextBytes(bytes);
      if (i % 2 == 0) {
        // Bytes that stop nothing, but one.
        int value = bytes[0];
        Arrays.fill(bytes, (byte) 'A');
        bytes[i / 2 % 8] = (byte) value;
      }
      int expected = 0;
      while (expected < 8 && !meets.test(bytes[expected])) {
        expected++;
      }
      assertThat(ByteLanes.index(test.applyAsLong(ByteLanes.at(bytes, 0)))).as("seed %d, round %d", seed, i).isEqualTo(expected);
    }
  }
}
