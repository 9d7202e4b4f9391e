package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.List;

/** Takes corners out of closed lines that turn too little to be any. */
final class FlatCorners {

  /** Points closer than this (metres) are one. */
  private static final double SAME = 1e-9;

  private FlatCorners() {
  }

  /**
   * The line without corners within {@code by} metres of the line between their neighbours, and without spikes no wider; at
   * least three stay.
   */
  static List<Vec2> without(List<Vec2> ring, double by) {
    List<Vec2> kept = new ArrayList<>(ring);
    for (int i = 0; kept.size() > 3 && i < kept.size(); i++) {
      Vec2 before = kept.get((i + kept.size() - 1) % kept.size());
      Vec2 here = kept.get(i);
      Vec2 after = kept.get((i + 1) % kept.size());
      Vec2 chord = after.minus(before);
      double l = chord.length();
      if (l < SAME || Math.abs(chord.cross(here.minus(before))) / l <= by && here.minus(before).dot(chord) > 0
          && after.minus(here).dot(chord) > 0 || isSpike(before.minus(here), after.minus(here), by)) {
        kept.remove(i);
        i = Math.max(-1, i - 2);
      }
    }
    return kept;
  }

  /** The edges to and from a corner run back on each other. */
  private static boolean isSpike(Vec2 back, Vec2 on, double width) {
    return back.dot(on) > 0 && Math.abs(back.cross(on)) <= width * Math.max(back.length(), on.length());
  }
}
