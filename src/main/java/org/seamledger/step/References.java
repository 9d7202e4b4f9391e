package org.seamledger.step;

import java.util.Arrays;

/**
 * The references in one instance's parameters, in their order; those inside aggregates and typed parameters count to the parameter that
 * holds them. One object serves all instances of a reading: it holds only during the call that hands it out.
 */
public final class References {

  private int size;
  private int[] parameters = new int[64];
  private long[] targets = new long[64];

  References() {
  }

  public int size() {
    return size;
  }

  /** The parameter, from 0, that reference {@code i} stands in. */
  public int parameter(int i) {
    return parameters[i];
  }

  /** The id that reference {@code i} leads to. */
  public long target(int i) {
    return targets[i];
  }

  /** The id that the first reference in a parameter leads to, or -1 where it has none. */
  public long first(int parameter) {
    for (int i = 0; i < size; i++) {
      if (parameters[i] == parameter) {
        return targets[i];
      }
    }
    return -1;
  }

  void clear() {
    size = 0;
  }

  void add(int parameter, long target) {
    if (size == targets.length) {
      parameters = Arrays.copyOf(parameters, 2 * size);
      targets = Arrays.copyOf(targets, 2 * size);
    }
    parameters[size] = parameter;
    targets[size++] = target;
  }
}
