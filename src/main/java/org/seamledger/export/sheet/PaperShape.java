package org.seamledger.export.sheet;

import java.util.List;
import org.seamledger.geometry.Vec2;

/** A segment or a convex area on paper, in plain numbers: a ring that looks for its place is held against thousands of them. */
final class PaperShape {

  private static final double SAME = 1e-9;
  /** A segment whose extent is farther away than this (mm) is parted from anything convex, whatever rounding does. */
  private static final double FAR = 1;

  private final double[] us;
  private final double[] vs;
  private final boolean closed;
  private final double minU;
  private final double maxU;
  private final double minV;
  private final double maxV;
  /** What it was held against last. */
  private PaperShape against;

  /** @param closed whether nothing may touch it */
  PaperShape(List<Vec2> points, boolean closed) {
    us = new double[points.size()];
    vs = new double[points.size()];
    for (int i = 0; i < us.length; i++) {
      us[i] = points.get(i).u();
      vs[i] = points.get(i).v();
    }
    this.closed = closed;
    minU = least(1, 0);
    maxU = most(1, 0);
    minV = least(0, 1);
    maxV = most(0, 1);
  }

  boolean isClosed() {
    return closed;
  }

  double minU() {
    return minU;
  }

  double maxU() {
    return maxU;
  }

  double minV() {
    return minV;
  }

  double maxV() {
    return maxV;
  }

  /** True when it is first held against a shape, and again only after others. */
  boolean isNewTo(PaperShape shape) {
    boolean isNew = against != shape;
    against = shape;
    return isNew;
  }

  /** Whether no line separates the two (separating axes). */
  boolean touches(PaperShape o) {
    boolean isFar = us.length == 2
        && (minU > o.maxU + FAR || o.minU > maxU + FAR || minV > o.maxV + FAR || o.minV > maxV + FAR);
    return !isFar && !isPartedByEdges(o) && !o.isPartedByEdges(this);
  }

  private boolean isPartedByEdges(PaperShape o) {
    for (int i = 0; i < us.length; i++) {
      int next = (i + 1) % us.length;
      double u = us[next] - us[i];
      double v = vs[next] - vs[i];
      boolean isPoint = Math.abs(u) < SAME && Math.abs(v) < SAME && Math.hypot(u, v) < SAME;
      if (!isPoint && (isParted(o, -v, u) || us.length == 2 && isParted(o, u, v))) {
        return true;
      }
    }
    return false;
  }

  private boolean isParted(PaperShape o, double u, double v) {
    return o.least(u, v) > most(u, v) + SAME || o.most(u, v) < least(u, v) - SAME;
  }

  private double least(double u, double v) {
    double least = Double.MAX_VALUE;
    for (int i = 0; i < us.length; i++) {
      least = Math.min(least, us[i] * u + vs[i] * v);
    }
    return least;
  }

  private double most(double u, double v) {
    double most = -Double.MAX_VALUE;
    for (int i = 0; i < us.length; i++) {
      most = Math.max(most, us[i] * u + vs[i] * v);
    }
    return most;
  }
}
