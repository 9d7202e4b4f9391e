package org.seamledger.site;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/**
 * The turn about the upright and the shift that bring points to their partners best: least squares in plan over the better half of the
 * pairs, found again and again until the half stays (least trimmed squares, P. J. Rousseeuw, 1984). The middle of an element's box turns
 * with the element only where it is as symmetric as a wall or a pipe is; what is not gets left out so.
 *
 * @param degrees anticlockwise about the shared origin
 * @param shift metres, after the turn
 * @param spread metres by which the better half of the pairs miss each other at most
 */
record TransformFit(double degrees, Vec3 shift, double spread) {

  /** Points closer together than this (metres, root of the sum of squares) say nothing about a turn. */
  private static final double WIDE = 1;
  private static final int ROUNDS = 30;

  /** A point and where its partner is. */
  record Pair(Vec3 from, Vec3 to) {
  }

  /** Nothing where fewer than two pairs lie apart. */
  static Optional<TransformFit> of(List<Pair> pairs) {
    List<Pair> kept = pairs;
    Optional<TransformFit> best = Optional.empty();
    for (int i = 0; i < ROUNDS; i++) {
      Optional<TransformFit> next = leastSquares(kept);
      if (next.isEmpty() || best.isPresent() && next.get().equals(best.get())) {
        break;
      }
      best = next;
      TransformFit fit = next.get();
      kept = pairs.stream().sorted(Comparator.comparingDouble(fit::miss)).limit(half(pairs)).toList();
    }
    return best.map(a -> new TransformFit(a.degrees, a.shift, spread(new RigidTransform(1, a.degrees, a.shift), pairs)));
  }

  /** Metres by which the better half of the pairs miss each other at most after a movement. */
  static double spread(RigidTransform m, List<Pair> pairs) {
    Transform t = m.transform();
    return pairs.stream().mapToDouble(p -> t.apply(p.from()).distance(p.to())).sorted().limit(half(pairs)).max().orElse(0);
  }

  private static int half(List<Pair> pairs) {
    return Math.max(2, pairs.size() / 2 + 1);
  }

  private double miss(Pair p) {
    return new RigidTransform(1, degrees, shift).transform().apply(p.from()).distance(p.to());
  }

  private static Optional<TransformFit> leastSquares(List<Pair> pairs) {
    Vec3 p = middle(pairs.stream().map(Pair::from).toList());
    Vec3 q = middle(pairs.stream().map(Pair::to).toList());
    double sin = 0;
    double cos = 0;
    double wide = 0;
    for (Pair pair : pairs) {
      Vec3 u = pair.from().minus(p);
      Vec3 v = pair.to().minus(q);
      sin += u.x() * v.y() - u.y() * v.x();
      cos += u.x() * v.x() + u.y() * v.y();
      wide += u.x() * u.x() + u.y() * u.y();
    }
    if (pairs.size() < 2 || wide < WIDE || Math.hypot(sin, cos) < 1e-9) {
      return Optional.empty();
    }
    double degrees = Math.toDegrees(Math.atan2(sin, cos));
    return Optional.of(new TransformFit(degrees, q.minus(new RigidTransform(1, degrees, Vec3.ZERO).transform().apply(p)), 0));
  }

  private static Vec3 middle(List<Vec3> points) {
    return points.stream().reduce(Vec3.ZERO, Vec3::plus).times(1.0 / Math.max(1, points.size()));
  }

  /** Turns that bring two of the one kind to two of the other as far apart, those that most pairs agree on first. */
  static List<Double> turns(List<Vec3> from, List<Vec3> to, double apart, int most) {
    List<Double> angles = new ArrayList<>();
    for (int i = 0; i < to.size(); i++) {
      for (int j = i + 1; j < to.size(); j++) {
        Vec3 v = to.get(j).minus(to.get(i));
        if (v.planLength() > WIDE) {
          addTurns(from, v, apart, angles);
        }
      }
    }
    return mostAgreed(angles, most);
  }

  private static void addTurns(List<Vec3> from, Vec3 v, double apart, List<Double> angles) {
    for (int k = 0; k < from.size(); k++) {
      for (int l = 0; l < from.size(); l++) {
        Vec3 u = from.get(l).minus(from.get(k));
        if (k != l && Math.abs(u.planLength() - v.planLength()) < apart) {
          double turn = Math.toDegrees(Math.atan2(v.y(), v.x()) - Math.atan2(u.y(), u.x()));
          angles.add(new RigidTransform(1, turn, Vec3.ZERO).degrees());
        }
      }
    }
  }

  /** Middles of the fullest stretches of half a degree. */
  private static List<Double> mostAgreed(List<Double> angles, int most) {
    record Stretch(double turn, int count) {
    }
    List<Double> sorted = angles.stream().sorted().toList();
    List<Stretch> stretches = new ArrayList<>();
    for (int i = 0, end = 0; i < sorted.size(); i++) {
      while (end < sorted.size() && sorted.get(end) < sorted.get(i) + 0.5) {
        end++;
      }
      stretches.add(new Stretch(sorted.get((i + end - 1) / 2), end - i));
    }
    stretches.sort(Comparator.comparingInt((Stretch s) -> -s.count()).thenComparingDouble(Stretch::turn));
    List<Double> turns = new ArrayList<>();
    for (Stretch s : stretches) {
      if (turns.size() < most && turns.stream().noneMatch(t -> Math.abs(t - s.turn()) < 0.5)) {
        turns.add(s.turn());
      }
    }
    return turns;
  }
}
