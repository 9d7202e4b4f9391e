package org.seamledger.watch;

import java.time.Duration;
import org.seamledger.takeoff.UnusableFileException;

/**
 * Rounds of one server with pauses between them, until the thread is interrupted. A fault ends a round and lengthens the pause, never the
 * watch.
 */
record Rounds(String server, Round round, Backoff pace, Sleeper sleeper, Watching.Setting setting) {

  /** One round of a server. */
  @FunctionalInterface
  interface Round {
    Outcome run() throws InterruptedException;
  }

  /** Returns where it was interrupted. Only what makes pauses impossible gets through: without them it would burn the processor. */
  void run() {
    try {
      while (true) {
        sleeper.sleep(one());
      }
    } catch (InterruptedException e) {
      tell("stopped", "");
    }
  }

  /** One round; gives the pause after it. */
  private Duration one() throws InterruptedException {
    Outcome outcome;
    try {
      outcome = round.run();
      setting.health().works(Health.watch(server));
    } catch (InterruptedException e) {
      throw e;
    } catch (UnusableFileException e) {
      tell("trouble", "settings/unusable: " + e.getMessage());
      outcome = Outcome.TROUBLE;
    } catch (Throwable e) {
      setting.health().failed(Health.watch(server), e);
      // Nobody knows whether a fault of the program passes: it is tried again, ever more rarely.
      outcome = Outcome.PASSING;
    }
    Duration pause = pace.after(outcome);
    if (outcome != Outcome.FINE) {
      tell("pause", "next round in " + pause.toMillis() / 1000 + " s");
    }
    return pause;
  }

  private void tell(String what, String detail) {
    try {
      setting.tell(what, server, "", 0, detail);
      setting.health().works("journal");
    } catch (RuntimeException | Error e) {
      setting.health().failed("journal", e);
    }
  }
}
