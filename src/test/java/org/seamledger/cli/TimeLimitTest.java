package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.seamledger.geometry.Interrupts;
import org.seamledger.run.Failure;
import org.seamledger.run.FailureException;
import org.seamledger.takeoff.Inputs;

/** An analysis without end is ended. */
class TimeLimitTest {

  @Test
  void geometryThatGoesOnForEverHearsThatItsTimeIsUp() {
    Session session = new Session((inputs, progress) -> {
      while (true) {
        Interrupts.check();
      }
    }, Environment.PLAIN, OutputStream.nullOutputStream(), new PrintStream(new ByteArrayOutputStream()), Clock.systemUTC(),
        Optional.empty());
    assertThatThrownBy(() -> session.analyze(Inputs.ofFiles(List.of(Path.of("a.ifc"))), Duration.ofMillis(50)))
        .isInstanceOfSatisfying(FailureException.class, e -> assertThat(e.failure()).isInstanceOf(Failure.TooLong.class));
    assertThat(Thread.currentThread().isInterrupted()).isFalse();
  }
}
