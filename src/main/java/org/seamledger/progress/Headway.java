package org.seamledger.progress;

import java.util.Collection;
import java.util.Iterator;

/**
 * Hears how far a long piece of work is, on the thread that does it; may stop it by an exception, which the work lets pass. Whoever loops
 * over something that grows with the model tells it before each item, so what listens must be quick.
 */
@FunctionalInterface
public interface Headway {

  /** Nobody listens. */
  Headway UNHEARD = share -> {};

  /**
   * @param share of the work that is done, 0 to 1; less than before where something has to be done again
   * @throws RuntimeException to stop the work, such as a {@link java.util.concurrent.CancellationException}
   */
  void at(double share);

  /** For a part of this work, which takes it from one share to another. */
  default Headway part(double from, double to) {
    return share -> at(from + (to - from) * share);
  }

  /** For one of several equal parts, counted from 0. */
  default Headway part(int number, int count) {
    return part(number / (double) count, (number + 1) / (double) count);
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
