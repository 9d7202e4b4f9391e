package org.seamledger.http.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** Values that several clients ask for at once. */
class RecentTest {

  private static final int PATIENCE_SECONDS = 60;

  private final Recent<String> recent = new Recent<>();
  private final AtomicInteger made = new AtomicInteger();
  private final CountDownLatch begun = new CountDownLatch(1);
  private final CountDownLatch end = new CountDownLatch(1);

  /** Takes until somebody says that it is done. */
  private String slow() {
    made.incrementAndGet();
    begun.countDown();
    try {
      assertThat(end.await(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
    return "large";
  }

  @Test
  void isMadeOnceAndHoldsUpNobodyWhoAsksForAnother() throws Exception {
    ExecutorService clients = Executors.newFixedThreadPool(3);
    try {
      Callable<String> large = () -> recent.get("a", this::slow);
      List<Future<String>> asked = List.of(clients.submit(large), clients.submit(large));
      assertThat(begun.await(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
      assertThat(clients.submit(() -> recent.get("b", () -> "small")).get(PATIENCE_SECONDS, TimeUnit.SECONDS))
          .as("while the other is being made").isEqualTo("small");
      end.countDown();
      for (Future<String> f : asked) {
        assertThat(f.get(PATIENCE_SECONDS, TimeUnit.SECONDS)).isEqualTo("large");
      }
      assertThat(made).hasValue(1);
    } finally {
      end.countDown();
      clients.shutdownNow();
    }
  }
}
