package org.seamledger.graph;

import java.lang.management.ManagementFactory;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;

/** Breaks off work of this thread that asks for more memory than it may: all that it is given counts, given back or not. */
final class AllocationWatch implements AutoCloseable {

  private static final int EVERY_MS = 5;
  private static final ScheduledExecutorService CLOCK = Executors.newSingleThreadScheduledExecutor(work -> {
    Thread thread = new Thread(work, "query-watch");
    thread.setDaemon(true);
    return thread;
  });

  private final ScheduledFuture<?> looking;

  AllocationWatch(long bytes, Runnable abort) {
    long thread = Thread.currentThread().getId();
    long before = given(thread);
    looking = CLOCK.scheduleAtFixedRate(() -> {
      if (given(thread) - before > bytes) {
        abort.run();
      }
    }, EVERY_MS, EVERY_MS, TimeUnit.MILLISECONDS);
  }

  private static long given(long thread) {
    return ManagementFactory.getThreadMXBean() instanceof com.sun.management.ThreadMXBean threads ? threads.getThreadAllocatedBytes(thread)
        : 0;
  }

  @Override
  public void close() {
    looking.cancel(false);
  }
}
