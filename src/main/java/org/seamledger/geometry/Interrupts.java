package org.seamledger.geometry;

import java.util.concurrent.CancellationException;

/**
 * Lets long computations hear that they are to stop. Whoever began one interrupts its thread; loops that grow with the model ask here,
 * and so does every overlay, however deep in the work it is.
 */
public final class Interrupts {

  private Interrupts() {
  }

  /** @throws CancellationException where the thread is interrupted; it stays so */
  public static void check() {
    if (Thread.currentThread().isInterrupted()) {
      throw new CancellationException("interrupted");
    }
  }
}
