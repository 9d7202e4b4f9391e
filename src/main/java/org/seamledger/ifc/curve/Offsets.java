package org.seamledger.ifc.curve;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec3;

/** Lines beside flat lines. */
public final class Offsets {

  /** A corner sharper than this (cosine of half the turn) is not mitred to its full length. */
  private static final double SHARPEST = 0.1;

  private Offsets() {
  }

  /** The line {@code by} metres to the left of a line in z = 0, mitred at its corners. */
  public static List<Vec3> beside(List<Vec3> line, double by) {
    boolean closed = Curves.isClosed(line);
    int n = closed ? line.size() - 1 : line.size();
    List<Vec3> out = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Vec3 in = i > 0 || closed ? left(line, (i - 1 + n) % n) : left(line, i);
      Vec3 on = i < n - 1 || closed ? left(line, i) : in;
      Vec3 half = in.plus(on);
      Vec3 m = half.length() < 1e-9 ? on : half.unit();
      out.add(line.get(i).plus(m.times(by / Math.max(SHARPEST, m.dot(on)))));
    }
    if (closed) {
      out.add(out.get(0));
    }
    return out;
  }

  private static Vec3 left(List<Vec3> line, int i) {
    Vec3 d = line.get(i + 1).minus(line.get(i)).unit();
    return new Vec3(-d.y(), d.x(), 0);
  }

  /** A line whose corners are rounded off by arcs of the given radius, as far as the pieces beside a corner have room for it. */
  public static List<Vec3> rounded(List<Vec3> line, double radius) {
    if (!(radius > 0)) {
      return line;
    }
    List<Vec3> out = new ArrayList<>();
    out.add(line.get(0));
    for (int i = 1; i + 1 < line.size(); i++) {
      Vec3 c = line.get(i);
      Vec3 a = line.get(i - 1).minus(c);
      Vec3 b = line.get(i + 1).minus(c);
      double half = Math.acos(Math.max(-1, Math.min(1, a.unit().dot(b.unit())))) / 2;
      double tangent = Math.min(radius / Math.tan(half), Math.min(a.length(), b.length()) / 2);
      if (half > Math.PI / 2 - 1e-6 || half < 1e-3) {
        out.add(c);
        continue;
      }
      double r = tangent * Math.tan(half);
      Vec3 middle = c.plus(a.unit().plus(b.unit()).unit().times(r / Math.sin(half) - r));
      out.addAll(Curves.arc(c.plus(a.unit().times(tangent)), middle, c.plus(b.unit().times(tangent))));
    }
    out.add(line.get(line.size() - 1));
    return Curves.withoutRepeats(out);
  }
}
