package org.seamledger.progress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Work done on several threads looks from outside as if one had done it. Where there is one processor only, one does. */
@Timeout(60)
class SharedWorkTest {

  private static final List<Integer> PIECES = IntStream.range(0, 500).boxed().toList();

  /** Takes longer for some pieces than for others, so that threads overtake each other. */
  private static int squared(int piece, Progress progress) {
    long sum = 0;
    for (int i = 0; i < piece % 7 * 3000; i++) {
      sum += i;
    }
    progress.at(sum < 0 ? 0 : 1);
    return piece * piece;
  }

  @Test
  void resultsComeInThePiecesOrder() {
    assertThat(SharedWork.of(PIECES, Progress.NONE, SharedWorkTest::squared)).isEqualTo(PIECES.stream().map(i -> i * i).toList());
    assertThat(SharedWork.of(List.<Integer>of(), Progress.NONE, SharedWorkTest::squared)).isEmpty();
    assertThat(SharedWork.of(List.of(3), Progress.NONE, SharedWorkTest::squared)).containsExactly(9);
  }

  @Test
  void resultsAreTakenInOrderByTheCaller() {
    List<Integer> taken = new ArrayList<>();
    Set<Thread> takers = ConcurrentHashMap.newKeySet();
    SharedWork.each(PIECES, Progress.NONE, Object::new, (own, i, part) -> squared(i, part), r -> {
      takers.add(Thread.currentThread());
      taken.add(r);
    });
    assertThat(taken).isEqualTo(PIECES.stream().map(i -> i * i).toList());
    assertThat(takers).containsExactly(Thread.currentThread());
  }

  @Test
  void noTwoThreadsHaveOneThing() {
    ConcurrentHashMap<AtomicInteger, Thread> users = new ConcurrentHashMap<>();
    AtomicBoolean shared = new AtomicBoolean();
    SharedWork.each(PIECES, Progress.NONE, AtomicInteger::new, (own, i, part) -> {
      Thread other = users.putIfAbsent(own, Thread.currentThread());
      shared.compareAndSet(false, other != null && other != Thread.currentThread());
      return squared(i, part);
    }, r -> {});
    assertThat(shared).isFalse();
    assertThat(users.values()).doesNotHaveDuplicates();
  }

  @Test
  void theFirstPiecesFailureIsThrown() {
    for (int round = 0; round < 50; round++) {
      int first = 10 * round;
      assertThatThrownBy(() -> SharedWork.of(PIECES, Progress.NONE, (i, part) -> {
        if (i >= first && (i - first) % 3 == 0) {
          throw new IllegalStateException("piece " + i);
        }
        return squared(i, part);
      })).hasMessage("piece " + first);
    }
  }

  @Test
  void progressIsToldForEveryPieceAndNeverGoesBack() {
    List<Double> shares = new ArrayList<>();
    AtomicInteger telling = new AtomicInteger();
    SharedWork.of(PIECES, (stage, share) -> {
      shares.add(share);
      assertThat(telling.incrementAndGet()).isEqualTo(1);
      telling.decrementAndGet();
    }, SharedWorkTest::squared);
    assertThat(shares).isSorted().hasSizeGreaterThanOrEqualTo(2 * PIECES.size()).allMatch(s -> s >= 0 && s <= 1);
    assertThat(shares.stream().distinct().count()).isGreaterThan(PIECES.size() / 2);
  }

  @Test
  void whoeverListensCancelsAllThreads() throws InterruptedException {
    AtomicInteger begun = new AtomicInteger();
    Set<Thread> workers = ConcurrentHashMap.newKeySet();
    assertThatThrownBy(() -> SharedWork.of(PIECES, (stage, share) -> {
      if (share > 0.1) {
        throw new IllegalArgumentException("enough");
      }
    }, (i, part) -> {
      workers.add(Thread.currentThread());
      begun.incrementAndGet();
      return squared(i, part);
    })).isInstanceOf(IllegalArgumentException.class).hasMessage("enough");
    assertThat(begun).hasValueLessThan(PIECES.size());
    assertThat(workers).allMatch(t -> t == Thread.currentThread() || !t.isAlive());
  }

  /** Helpers may be deep in a piece, far from any progress, when the caller is stopped. */
  @Test
  void helpersAreInterruptedWhenTheCallerIs() {
    AtomicBoolean stuck = new AtomicBoolean();
    Thread caller = Thread.currentThread();
    assertThatThrownBy(() -> SharedWork.of(PIECES, Progress.NONE, (i, part) -> {
      if (Thread.currentThread() == caller) {
        caller.interrupt();
        throw new CancellationException("interrupted");
      }
      try {
        stuck.compareAndSet(false, new CountDownLatch(1).await(50, TimeUnit.SECONDS));
      } catch (InterruptedException e) {
        throw new CancellationException();
      }
      return i;
    })).isInstanceOf(CancellationException.class);
    assertThat(Thread.interrupted()).isTrue();
    assertThat(stuck).isFalse();
  }

  /** As where a file is closed because one of its readers was interrupted. */
  @Test
  void theInterruptIsTheReasonOfWhatItBreaks() {
    Thread caller = Thread.currentThread();
    CountDownLatch interrupted = new CountDownLatch(1);
    assertThatThrownBy(() -> SharedWork.of(PIECES, Progress.NONE, (i, part) -> {
      if (Thread.currentThread() == caller) {
        caller.interrupt();
        interrupted.countDown();
        throw new IllegalStateException("closed by interrupt");
      }
      try {
        interrupted.await();
      } catch (InterruptedException e) {
        throw new CancellationException();
      }
      throw new IllegalStateException("closed");
    })).hasMessage("closed by interrupt");
    assertThat(Thread.interrupted()).isTrue();
  }

  @Test
  void errorsOfHelpersReachTheCaller() {
    Thread caller = Thread.currentThread();
    AtomicInteger helped = new AtomicInteger();
    try {
      SharedWork.of(PIECES, Progress.NONE, (i, part) -> {
        if (Thread.currentThread() != caller) {
          helped.incrementAndGet();
          throw new StackOverflowError("deep");
        }
        return squared(i, part);
      });
      assertThat(helped).hasValue(0);
    } catch (StackOverflowError e) {
      assertThat(e).hasMessage("deep");
      assertThat(helped).hasPositiveValue();
    }
  }

  /** Shared work within shared work, as analyses at once in one process: no more threads than processors. */
  @Test
  void helpersAreNoMoreThanProcessors() {
    AtomicInteger running = new AtomicInteger();
    AtomicInteger most = new AtomicInteger();
    SharedWork.of(PIECES.subList(0, 8), Progress.NONE, (i, part) -> SharedWork.of(PIECES.subList(0, 20), part, (k, p) -> {
      most.accumulateAndGet(running.incrementAndGet(), Math::max);
      int result = squared(k + i, p);
      running.decrementAndGet();
      return result;
    }));
    assertThat(most).hasValueLessThanOrEqualTo(Runtime.getRuntime().availableProcessors());
    assertThat(SharedWork.of(PIECES, Progress.NONE, SharedWorkTest::squared)).hasSameSizeAs(PIECES);
  }
}
