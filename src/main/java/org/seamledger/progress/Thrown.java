package org.seamledger.progress;

/** What a helping thread threw goes on in the thread that it helped. */
final class Thrown {

  private Thrown() {
  }

  /** @param failure unchecked, or null for none */
  static void again(Throwable failure) {
    if (failure instanceof RuntimeException e) {
      throw e;
    }
    if (failure instanceof Error e) {
      throw e;
    }
  }
}
