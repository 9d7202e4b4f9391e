package org.seamledger.progress;

import java.util.Collection;
import java.util.Iterator;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/**
 * Receives how far a long piece of work is, on the thread that does it, and may cancel it there: an exception that it throws passes
 * through the work to whoever began it. Whoever loops over something that grows with the model tells it before each item, so what
 * receives must be quick.
 */
@FunctionalInterface
public interface Progress {

  /** Nobody listens. */
  Progress NONE = (stage, share) -> {};

  /**
   * @param stage what is being done, a few words for people; empty within a part of the work that has no name of its own
   * @param share of the work that is done, 0 to 1; less than before where something has to be done again
   * @throws CancellationException to cancel the work
   */
  void at(String stage, double share);

  /** The stage that was named last goes on. */
  default void at(double share) {
    at("", share);
  }

  /** For a part of this work, which takes it from one share to another. */
  default Progress part(double from, double to) {
    return (stage, share) -> at(stage, from + (to - from) * share);
  }

  /** For one of several equal parts, counted from 0. */
  default Progress part(int number, int count) {
    return part(number / (double) count, (number + 1) / (double) count);
  }

  /** Begins a part that has a name of its own. */
  default Progress stage(String words, double from, double to) {
    at(words, from);
    Progress part = part(from, to);
    return (stage, share) -> part.at(stage.isEmpty() ? words : stage, share);
  }

  /** The same, which in addition cancels the work as soon as it has been asked to. */
  default Progress unless(BooleanSupplier isCancelled) {
    return (stage, share) -> {
      if (isCancelled.getAsBoolean()) {
        throw new CancellationException();
      }
      at(stage, share);
    };
  }

  /** The items, with the share told before each of them. */
  default <T> Iterable<T> over(Collection<T> items) {
    return () -> {
      Iterator<T> all = items.iterator();
      return new Iterator<>() {
        private int done;

        @Override
        public boolean hasNext() {
          return all.hasNext();
        }

        @Override
        public T next() {
          T item = all.next();
          at(done++ / (double) items.size());
          return item;
        }
      };
    };
  }
}
