package org.seamledger.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.progress.Progress;
import org.seamledger.source.ModelServerException;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.UnusableFileException;

/** Whatever ends a run is one failure with the code that clients and stored analyses know it by. */
class FailureTest {

  static Stream<Arguments> thrown() {
    return Stream.of(
        Arguments.of(new UnreadableModelException("a.ifc", 3, 7, "a keyword", "a bracket"), "model/unreadable",
            "a.ifc:3:7: expected a keyword, found a bracket"),
        Arguments.of(new UnusableFileException(new IllegalStateException("kinds.ttl:1:2: no")), "settings/unusable", "kinds.ttl:1:2: no"),
        Arguments.of(new ModelServerException(ModelServerException.Reason.TIMED_OUT, "too slow"), "server/timed-out", "too slow"),
        Arguments.of(new UncheckedIOException(new IOException("No space left on device")), "storage/full",
            "There is no room left on the disk for what the analysis writes. Make room there, then run it again."),
        Arguments.of(new CancellationException(), "cancelled", "Cancelled on request."),
        Arguments.of(new NoClassDefFoundError("x"), "internal",
            "The program failed at these models; its log says where. Please report it with the model."));
  }

  @ParameterizedTest
  @MethodSource("thrown")
  void everythingThrownHasACodeAndWords(Throwable thrown, String code, String text) {
    Analyzer<String> analyzer = (inputs, progress) -> {
      throw FailureTest.<RuntimeException>unchecked(thrown);
    };
    Outcome<String> outcome = analyzer.run(Inputs.ofFiles(List.of(Path.of("a.ifc"))), Progress.NONE);
    Failure failure = outcome.failure().orElseThrow();
    assertThat(failure.code()).isEqualTo(code);
    assertThat(failure.text()).isEqualTo(text);
    assertThat(Failure.isOurs(failure.code())).isEqualTo(List.of("internal", "settings/unusable", "storage/full").contains(code));
    assertThat(Failure.isFault(failure.code())).isEqualTo(List.of("internal", "storage/full").contains(code));
    assertThatThrownBy(outcome::orThrow).isInstanceOfSatisfying(FailureException.class, e -> assertThat(Failure.of(e)).isEqualTo(failure));
  }

  @SuppressWarnings("unchecked")
  private static <E extends Throwable> E unchecked(Throwable e) throws E {
    throw (E) e;
  }

  @Test
  void aRunThatWasToldToStopSaysWhyUnlessItsModelIsWrong() {
    Failure tooLong = new Failure.TooLong(Duration.ofSeconds(4));
    Failure fault = Failure.of(new IllegalStateException("closed by interrupt"));
    assertThat(fault.orStopped(Optional.of(tooLong)).code()).isEqualTo("analysis/too-long");
    assertThat(fault.orStopped(Optional.empty())).isEqualTo(fault);
    Failure model = Failure.of(new UnreadableModelException("a.ifc", 0, 0, "a file", "none"));
    assertThat(model.orStopped(Optional.of(tooLong))).isEqualTo(model);
    assertThat(new Failure.Cancelled().orStopped(Optional.empty()).code()).as("nobody asked").isEqualTo("internal");
  }

  @Test
  void whatIsDoneHasNoFailure() {
    Outcome<String> outcome = Outcome.of(() -> "ledger");
    assertThat(outcome.failure()).isEmpty();
    assertThat(outcome.orThrow()).isEqualTo("ledger");
  }
}
