package org.seamledger.watch;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/** Sleeps until the time is over or somebody wakes it; a call that comes while it is awake cuts its next sleep short. */
final class WakeUp implements Sleeper {

  private final Semaphore calls = new Semaphore(0);

  @Override
  public void sleep(Duration time) throws InterruptedException {
    if (calls.tryAcquire(time.toMillis(), TimeUnit.MILLISECONDS)) {
      calls.drainPermits();
    }
  }

  void wake() {
    calls.release();
  }
}
