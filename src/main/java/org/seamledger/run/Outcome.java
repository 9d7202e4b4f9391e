package org.seamledger.run;

import java.util.Optional;
import java.util.concurrent.Callable;

/**
 * How a run ended: with what was wanted, or with the reason why there is none.
 *
 * @param <T> what was wanted
 */
public sealed interface Outcome<T> {

  /** It did what it was to do. */
  record Done<T>(T value) implements Outcome<T> {
  }

  /** It did not. */
  record Failed<T>(Failure reason) implements Outcome<T> {
  }

  /** Does the work; whatever it throws is a failure. */
  static <T> Outcome<T> of(Callable<T> work) {
    try {
      return new Done<>(work.call());
    } catch (Throwable e) {
      // Errors too: memory that is short and a class that is missing are none of the exceptions.
      return new Failed<>(Failure.of(e));
    }
  }

  /** Why there is nothing; empty where it is done. */
  default Optional<Failure> failure() {
    return this instanceof Failed<T> failed ? Optional.of(failed.reason) : Optional.empty();
  }

  /** @throws FailureException where there is none */
  default T orThrow() {
    if (this instanceof Done<T> done) {
      return done.value;
    }
    throw new FailureException(((Failed<T>) this).reason);
  }
}
