package org.seamledger.watch;

import java.time.Duration;

/** Lets time pass. */
@FunctionalInterface
public interface Sleeper {

  void sleep(Duration time) throws InterruptedException;
}
