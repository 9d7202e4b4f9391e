package org.seamledger.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The pauses between rounds; what is expected follows from doubling, by hand. */
class BackoffTest {

  private static final Duration MINUTE = Duration.ofMinutes(1);
  private static final Duration QUARTER = Duration.ofMinutes(15);

  private static Backoff pace(long seed) {
    return new Backoff(MINUTE, QUARTER, new Random(seed));
  }

  private static void between(Duration pause, long fromSeconds, long toSeconds) {
    assertThat(pause).isBetween(Duration.ofSeconds(fromSeconds), Duration.ofSeconds(toSeconds));
  }

  @Test
  void aServerThatAnswersIsAskedAtTheUsualPaceAndNeverAtTheSameInstantAsOthers() {
    List<Duration> pauses = new ArrayList<>();
    for (long seed = 1; seed <= 50; seed++) {
      pauses.add(pace(seed).after(Outcome.FINE));
    }
    assertThat(pauses).allSatisfy(p -> between(p, 48, 60));
    assertThat(pauses).as("jitter").doesNotHaveDuplicates();
  }

  @Test
  void failuresThatMayPassDoubleThePauseUpToTheLimitAndOneGoodRoundEndsThat() {
    Backoff pace = pace(7);
    long[] full = {120, 240, 480, 900, 900, 900};
    for (long seconds : full) {
      between(pace.after(Outcome.PASSING), seconds * 8 / 10, seconds);
    }
    between(pace.after(Outcome.FINE), 48, 60);
    between(pace.after(Outcome.PASSING), 96, 120);
  }

  @Test
  void aHundredFailuresStayAtTheLimit() {
    Backoff pace = pace(3);
    for (int i = 0; i < 100; i++) {
      pace.after(Outcome.PASSING);
    }
    between(pace.after(Outcome.PASSING), 720, 900);
  }

  @Test
  void aWrongPasswordIsNotTriedOften() {
    between(pace(1).after(Outcome.TROUBLE), 720, 900);
  }

  @Test
  void theSameSeedGivesTheSamePauses() {
    assertThat(pace(42).after(Outcome.PASSING)).isEqualTo(pace(42).after(Outcome.PASSING));
  }

  @Test
  void pausesMakeSense() {
    assertThatThrownBy(() -> new Backoff(Duration.ZERO, MINUTE, new Random(1))).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Backoff(QUARTER, MINUTE, new Random(1))).isInstanceOf(IllegalArgumentException.class);
  }
}
