package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Numbers 0 … n − 1 in sets that are joined two by two (union-find with path halving). The least number of a set stands for it, so the
 * outcome does not depend on the order of joining.
 */
public final class DisjointSets {

  private final int[] parent;

  /** {@code count} sets of one number each. */
  public DisjointSets(int count) {
    parent = new int[count];
    for (int i = 0; i < count; i++) {
      parent[i] = i;
    }
  }

  /** The least number in the set of {@code i}. */
  public int root(int i) {
    int r = i;
    while (parent[r] != r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  }

  /** Makes one set of those of {@code i} and {@code j}. */
  public void join(int i, int j) {
    int a = root(i);
    int b = root(j);
    parent[Math.max(a, b)] = Math.min(a, b);
  }

  /** Every set, its numbers ascending; the sets by their least numbers. */
  public List<List<Integer>> sets() {
    Map<Integer, List<Integer>> sets = new TreeMap<>();
    for (int i = 0; i < parent.length; i++) {
      sets.computeIfAbsent(root(i), r -> new ArrayList<>()).add(i);
    }
    return List.copyOf(sets.values());
  }
}
