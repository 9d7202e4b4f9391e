package org.seamledger.geometry;

import java.util.Arrays;

/** Corners by number, those closer than a micrometre being one: a hash of cells four micrometres wide. */
final class CornerIndex {

  /** Corners closer than this (metres) are one; models are exact to a hundredth of a millimetre at best. */
  private static final double WELD = 1e-6;
  private static final double CELL = 4 * WELD;
  /** Room at the beginning; it doubles as it fills. */
  private static final int FEW = 16;

  private double[] xyz = new double[3 * FEW];
  private int count;
  /** First corner of each bucket of cells, and the next one in the same bucket; -1 for none. */
  private int[] first = filled(4 * FEW);
  private int[] next = new int[FEW];

  private static int[] filled(int size) {
    int[] none = new int[size];
    Arrays.fill(none, -1);
    return none;
  }

  /** Index of the corner at {@code p}, a new one where none is within the weld distance. */
  int indexOf(Vec3 p) {
    // A corner within the weld distance lies in one of the eight cells nearest to p.
    double x = p.x() / CELL;
    double y = p.y() / CELL;
    double z = p.z() / CELL;
    long cx = Math.round(x);
    long cy = Math.round(y);
    long cz = Math.round(z);
    for (int k = 0; k < 8; k++) {
      int bucket = bucket(cx + (k & 1) * (x < cx ? -1 : 1), cy + (k >> 1 & 1) * (y < cy ? -1 : 1), cz + (k >> 2) * (z < cz ? -1 : 1));
      for (int i = first[bucket]; i >= 0; i = next[i]) {
        if (at(i).distance(p) <= WELD) {
          return i;
        }
      }
    }
    return added(p, cx, cy, cz);
  }

  private int added(Vec3 p, long cx, long cy, long cz) {
    if (count == next.length) {
      xyz = Arrays.copyOf(xyz, 2 * xyz.length);
      next = Arrays.copyOf(next, 2 * count);
      rehash(4 * next.length);
    }
    xyz[3 * count] = p.x();
    xyz[3 * count + 1] = p.y();
    xyz[3 * count + 2] = p.z();
    enter(count, cx, cy, cz);
    return count++;
  }

  private void rehash(int size) {
    first = filled(size);
    for (int i = 0; i < count; i++) {
      enter(i, Math.round(xyz[3 * i] / CELL), Math.round(xyz[3 * i + 1] / CELL), Math.round(xyz[3 * i + 2] / CELL));
    }
  }

  private void enter(int i, long cx, long cy, long cz) {
    int bucket = bucket(cx, cy, cz);
    next[i] = first[bucket];
    first[bucket] = i;
  }

  private int bucket(long x, long y, long z) {
    long h = (x * 73856093L) ^ (y * 19349663L << 1) ^ (z * 83492791L << 2);
    return (int) (h * 0x9E3779B97F4A7C15L >>> 33) & first.length - 1;
  }

  Vec3 at(int i) {
    return new Vec3(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
  }

  /** The corners' coordinates one after another, metres. */
  double[] coordinates() {
    return Arrays.copyOf(xyz, 3 * count);
  }
}
