package org.seamledger.watch;

/** Goes on after a fault, so that one project or server does not hold the others up, and throws the first in the end. */
final class FirstFault {

  private Throwable first;

  /** @param fault unchecked: an exception or an error */
  void add(Throwable fault) {
    if (first == null) {
      first = fault;
    } else if (first != fault) {
      first.addSuppressed(fault);
    }
  }

  /** Throws what was added first, if anything was. */
  void rethrow() {
    if (first instanceof Error e) {
      throw e;
    }
    if (first != null) {
      throw (RuntimeException) first;
    }
  }
}
