package org.seamledger.progress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class AsideTest {

  @Test
  void givesWhatWasMade() {
    try (Aside<String> aside = Aside.of(() -> "made")) {
      assertThat(aside.get()).isEqualTo("made");
      assertThat(aside.get()).isEqualTo("made");
    }
  }

  @Test
  void throwsWhatWasThrown() {
    try (Aside<String> aside = Aside.of(() -> {
      throw new IllegalStateException("no");
    })) {
      assertThatThrownBy(aside::get).hasMessage("no");
      assertThatThrownBy(aside::check).hasMessage("no");
    }
  }

  /** With all spare processors taken, work is done by the caller; they come back when the threads end. */
  @Test
  void neverMoreThreadsThanSpareProcessors() {
    CompletableFuture<Boolean> end = new CompletableFuture<>();
    List<Aside<Boolean>> busy = new ArrayList<>();
    Optional<Aside<Boolean>> next;
    while ((next = Aside.ifSpare(end::join)).isPresent()) {
      busy.add(next.get());
    }
    try (Aside<Thread> here = Aside.of(Thread::currentThread)) {
      assertThat(busy.size()).isLessThan(Runtime.getRuntime().availableProcessors());
      assertThat(here.get()).isEqualTo(Thread.currentThread());
    } finally {
      end.complete(true);
      busy.forEach(Aside::close);
    }
    assertThat(busy).allMatch(Aside::get);
    if (!busy.isEmpty()) {
      try (Aside<Thread> there = Aside.of(Thread::currentThread)) {
        assertThat(there.get()).isNotEqualTo(Thread.currentThread());
      }
    }
  }
}
