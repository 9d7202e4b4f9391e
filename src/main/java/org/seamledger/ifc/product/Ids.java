package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * A stretch of a class's instances: enough work for a thread to fetch, and few enough that none waits long for another's last ones.
 *
 * @param <T> what says which class it is
 * @param ids of all instances, ascending
 * @param to behind the last of the stretch
 */
record Ids<T>(T type, long[] ids, int from, int to) {

  private static final int MOST = 128;

  /** The stretches of several classes, one class after another. */
  static <T> List<Ids<T>> of(List<T> types, Function<T, long[]> idsOf) {
    List<Ids<T>> stretches = new ArrayList<>();
    for (T type : types) {
      long[] ids = idsOf.apply(type);
      for (int from = 0; from < ids.length; from += MOST) {
        stretches.add(new Ids<>(type, ids, from, Math.min(from + MOST, ids.length)));
      }
    }
    return stretches;
  }
}
