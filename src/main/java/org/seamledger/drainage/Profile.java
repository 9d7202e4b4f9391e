package org.seamledger.drainage;

import java.util.ArrayList;
import java.util.List;

/**
 * Plan area whose water comes to a line, by the place where it comes: a piecewise linear density (square metres a metre of the line's own
 * coordinate) and amounts at points (square metres).
 */
final class Profile {

  private static final double SAME = 1e-9;

  private record Piece(double from, double to, double begin, double end) {
    double amount() {
      return (to - from) * (begin + end) / 2;
    }

    double at(double x) {
      return begin + (end - begin) * (x - from) / (to - from);
    }
  }

  private record Point(double at, double amount) {
  }

  private final List<Piece> pieces = new ArrayList<>();
  private final List<Point> points = new ArrayList<>();

  /** Adds a density that goes from {@code begin} at {@code from} to {@code end} at {@code to}. */
  void add(double from, double to, double begin, double end) {
    if (to - from < SAME) {
      addPoint(from, (to - from) * (begin + end) / 2);
      return;
    }
    for (int i = 0; i < pieces.size(); i++) {
      Piece p = pieces.get(i);
      if (Math.abs(p.from - from) < SAME && Math.abs(p.to - to) < SAME) {
        // The same stretch to a nanometre: what the rounding takes away at its ends comes with the density.
        double share = (to - from) / (p.to - p.from);
        pieces.set(i, new Piece(p.from, p.to, p.begin + begin * share, p.end + end * share));
        return;
      }
    }
    pieces.add(new Piece(from, to, begin, end));
  }

  void addPoint(double at, double amount) {
    if (amount == 0) {
      return;
    }
    for (int i = 0; i < points.size(); i++) {
      if (Math.abs(points.get(i).at - at) < SAME) {
        points.set(i, new Point(points.get(i).at, points.get(i).amount + amount));
        return;
      }
    }
    points.add(new Point(at, amount));
  }

  /** All of it, square metres. */
  double total() {
    return pieces.stream().mapToDouble(Piece::amount).sum() + points.stream().mapToDouble(Point::amount).sum();
  }

  /** The part from one bound to the next, each amount in one part exactly: what lies outside all bounds is in the nearest part. */
  List<Profile> split(double[] bounds) {
    List<Profile> parts = new ArrayList<>();
    for (int i = 0; i + 1 < bounds.length; i++) {
      parts.add(new Profile());
    }
    int last = parts.size() - 1;
    for (Point p : points) {
      int i = 0;
      while (i < last && p.at > bounds[i + 1]) {
        i++;
      }
      parts.get(i).addPoint(p.at, p.amount);
    }
    for (Piece p : pieces) {
      for (int i = 0; i <= last; i++) {
        double from = i == 0 ? p.from : Math.max(p.from, bounds[i]);
        double to = i == last ? p.to : Math.min(p.to, bounds[i + 1]);
        if (to > from) {
          parts.get(i).add(from, to, p.at(from), p.at(to));
        }
      }
    }
    return parts;
  }

  /** Adds this to another line's, where {@code from} of this one lies at {@code otherFrom} of the other, and {@code to} likewise. */
  void into(Profile other, double from, double to, double otherFrom, double otherTo) {
    double scale = Math.abs(to - from) < SAME ? 0 : (otherTo - otherFrom) / (to - from);
    for (Point p : points) {
      other.addPoint(otherFrom + (p.at - from) * scale, p.amount);
    }
    for (Piece p : pieces) {
      double a = otherFrom + (p.from - from) * scale;
      double b = otherFrom + (p.to - from) * scale;
      double thinner = (b - a) / (p.to - p.from);
      if (Math.abs(b - a) < SAME) {
        other.addPoint(a, p.amount());
      } else if (a < b) {
        other.add(a, b, p.begin / thinner, p.end / thinner);
      } else {
        other.add(b, a, p.end / -thinner, p.begin / -thinner);
      }
    }
  }
}
