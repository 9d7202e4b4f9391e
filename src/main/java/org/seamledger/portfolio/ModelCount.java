package org.seamledger.portfolio;

import java.util.function.Consumer;

/** Counts the models that are done, and says now and then how many. */
public final class ModelCount {

  private static final long PAUSE = 5_000_000_000L;

  private final int all;
  private final Consumer<String> say;
  private int done;
  private long told = System.nanoTime();

  public ModelCount(int all, Consumer<String> say) {
    this.all = all;
    this.say = say;
  }

  /** One more is done. */
  public synchronized void add() {
    done++;
    long now = System.nanoTime();
    if (now - told > PAUSE) {
      told = now;
      say.accept(done + " of " + all + " models");
    }
  }
}
