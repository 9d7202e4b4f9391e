package org.seamledger.site;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/**
 * Which elements of one model could be which of another's, once that one is scaled and turned; every pair votes for the shift that brings
 * it together, and many votes for one shift are no chance. Elements pair by GlobalId, else by class and size; an upright pipe or duct pairs
 * with a hole in a roof that it fits through, and states nothing about height.
 */
final class Matches {

  /** Votes within this distance (metres) of each other agree. */
  private static final double AGREE = 0.06;
  private static final double CELL = 0.12;
  /** Sizes that differ by less (metres) are equal. */
  private static final double SIZE = 0.02;
  private static final int MOST_PARTNERS = 200;
  private static final int MOST_VOTES = 400_000;
  private static final int LOOKED_AT = 24;

  private record Vote(Vec3 shift, Mark a, Mark b, boolean sameId) {
  }

  /**
   * A shift that several pairs agree on.
   *
   * @param count elements of either model that have a partner at this shift
   * @param sameId how many of them by their GlobalId
   * @param possible elements that have a partner at any shift
   */
  record Peak(Vec3 shift, int count, int sameId, int possible) {
  }

  private final List<Vote> votes = new ArrayList<>();
  private final int possible;
  private final boolean flat;

  private Matches(List<Vote> votes, boolean flat) {
    this.votes.addAll(votes);
    this.flat = flat;
    this.possible = Math.min(distinct(votes, true), distinct(votes, false));
  }

  /** Elements against elements, {@code b} scaled and turned about the shared origin by {@code turn}. */
  static Matches ofElements(List<Mark> a, List<Mark> b, Transform turn) {
    Map<String, Mark> byId = new HashMap<>();
    Map<String, List<Mark>> families = new HashMap<>();
    for (Mark m : a) {
      if (!m.kind().equals(Mark.HOLE)) {
        byId.put(m.id(), m);
        families.computeIfAbsent(m.family(), k -> new ArrayList<>()).add(m);
      }
    }
    families.values().forEach(l -> l.sort(Comparator.comparingDouble(Mark::height)));
    List<Vote> votes = new ArrayList<>();
    for (Mark m : b) {
      Vec3 at = turn.apply(m.box().centre());
      Mark same = byId.get(m.id());
      if (same != null) {
        votes.add(new Vote(same.box().centre().minus(at), same, m, true));
      } else if (votes.size() < MOST_VOTES) {
        alike(families.getOrDefault(m.family(), List.of()), m, at, turn, votes);
      }
    }
    return new Matches(votes, false);
  }

  private static void alike(List<Mark> family, Mark m, Vec3 at, Transform turn, List<Vote> votes) {
    double factor = Math.hypot(turn.m00(), turn.m10());
    Box3 turned = turned(m.box(), turn);
    boolean square = isSquare(turn);
    int low = 0;
    int high = family.size();
    while (low < high) {
      int mid = (low + high) / 2;
      if (family.get(mid).height() < m.height() * factor - SIZE) {
        low = mid + 1;
      } else {
        high = mid;
      }
    }
    for (int i = low, n = 0; i < family.size() && n < MOST_PARTNERS && family.get(i).height() < m.height() * factor + SIZE; i++) {
      Mark o = family.get(i);
      // Boxes along the axes say nothing about plan sizes once they are turned obliquely.
      if (!square || Math.abs(o.width() - (turned.maxX() - turned.minX())) < SIZE
          && Math.abs(o.depth() - (turned.maxY() - turned.minY())) < SIZE) {
        votes.add(new Vote(o.box().centre().minus(at), o, m, false));
        n++;
      }
    }
  }

  /** Upright services of {@code b} against holes in the roofs of {@code a}, in plan. */
  static Matches ofHoles(List<Mark> a, List<Mark> b, Transform turn) {
    List<Mark> holes = a.stream().filter(m -> m.kind().equals(Mark.HOLE)).toList();
    List<Vote> votes = new ArrayList<>();
    double factor = Math.hypot(turn.m00(), turn.m10());
    boolean square = isSquare(turn);
    for (Mark m : b) {
      Box3 box = turned(m.box(), turn);
      if (!isUpright(m) || votes.size() > MOST_VOTES) {
        continue;
      }
      for (Mark hole : holes) {
        if (square ? fits(box, hole.box()) : mayFit(m, factor, hole)) {
          Vec3 shift = hole.box().centre().minus(box.centre());
          votes.add(new Vote(new Vec3(shift.x(), shift.y(), 0), hole, m, false));
        }
      }
    }
    return new Matches(votes, true);
  }

  /** Through the hole in plan, and not lost in it. */
  private static boolean fits(Box3 thing, Box3 hole) {
    double w = thing.maxX() - thing.minX();
    double d = thing.maxY() - thing.minY();
    double across = hole.maxX() - hole.minX();
    double along = hole.maxY() - hole.minY();
    return w <= across + SIZE && d <= along + SIZE && w > across / 4 && d > along / 4;
  }

  /** A pipe, a duct or the like that is at least twice as high as wide. */
  static boolean isUpright(Mark m) {
    return m.service() && m.height() >= 2 * Math.max(m.width(), m.depth());
  }

  /** Where a model is turned obliquely, the box round what is not round may be half as wide again as the thing. */
  static boolean mayFit(Mark thing, double factor, Mark hole) {
    double w = factor * Math.max(thing.width(), thing.depth());
    double widest = Math.max(hole.width(), hole.depth());
    return w < 1.5 * (widest + SIZE) && w > widest / 4;
  }

  private static boolean isSquare(Transform turn) {
    return Math.abs(turn.m00() * turn.m10()) < 1e-9;
  }

  static Box3 turned(Box3 b, Transform t) {
    Box3 box = Box3.EMPTY;
    for (int k = 0; k < 8; k++) {
      box = box.with(t.apply(new Vec3((k & 1) == 0 ? b.minX() : b.maxX(), (k & 2) == 0 ? b.minY() : b.maxY(),
          (k & 4) == 0 ? b.minZ() : b.maxZ())));
    }
    return box;
  }

  /** What agrees with a given shift. */
  Peak at(Vec3 shift) {
    Vec3 s = flat ? new Vec3(shift.x(), shift.y(), 0) : shift;
    List<Vote> agreeing = votes.stream().filter(v -> v.shift().distance(s) < AGREE).toList();
    return peak(s, agreeing);
  }

  /** Middles of the elements that agree with a shift and of their partners: of those with one GlobalId, where there are two of them. */
  List<TransformFit.Pair> pairs(Vec3 shift) {
    Vec3 s = flat ? new Vec3(shift.x(), shift.y(), 0) : shift;
    List<Vote> agreeing = votes.stream().filter(v -> v.shift().distance(s) < AGREE).toList();
    boolean byId = agreeing.stream().filter(Vote::sameId).count() > 1;
    return agreeing.stream().filter(v -> v.sameId() || !byId).map(v -> new TransformFit.Pair(level(v.b()), level(v.a()))).toList();
  }

  /** Holes say nothing about heights. */
  private Vec3 level(Mark m) {
    Vec3 c = m.box().centre();
    return flat ? new Vec3(c.x(), c.y(), 0) : c;
  }

  private Peak peak(Vec3 shift, List<Vote> agreeing) {
    List<Vote> ids = agreeing.stream().filter(Vote::sameId).toList();
    return new Peak(shift, Math.min(distinct(agreeing, true), distinct(agreeing, false)), distinct(ids, false), possible);
  }

  private static int distinct(List<Vote> votes, boolean first) {
    Set<Mark> marks = new HashSet<>();
    votes.forEach(v -> marks.add(first ? v.a() : v.b()));
    return marks.size();
  }

  /** The shift that most pairs agree on; of several the smallest. */
  Peak best() {
    Map<String, List<Vote>> cells = new TreeMap<>();
    for (Vote v : votes) {
      cells.computeIfAbsent(cell(v.shift(), 0, 0, 0), k -> new ArrayList<>()).add(v);
    }
    List<List<Vote>> fullest =
        cells.values().stream().sorted(Comparator.comparingInt((List<Vote> l) -> -l.size())).limit(LOOKED_AT).toList();
    Peak best = new Peak(Vec3.ZERO, 0, 0, possible);
    for (List<Vote> cell : fullest) {
      Peak peak = refined(cells, cell.get(0).shift());
      if (peak.count() > best.count() || peak.count() == best.count() && peak.shift().length() < best.shift().length()) {
        best = peak;
      }
    }
    return best;
  }

  private Peak refined(Map<String, List<Vote>> cells, Vec3 near) {
    List<Vote> around = new ArrayList<>();
    for (int i = -1; i <= 1; i++) {
      for (int j = -1; j <= 1; j++) {
        for (int k = -1; k <= 1; k++) {
          around.addAll(cells.getOrDefault(cell(near, i, j, k), List.of()));
        }
      }
    }
    Vec3 middle = new Vec3(median(around, 0), median(around, 1), median(around, 2));
    return peak(middle, around.stream().filter(v -> v.shift().distance(middle) < AGREE).toList());
  }

  private static double median(List<Vote> votes, int axis) {
    double[] sorted = votes.stream().map(Vote::shift).mapToDouble(s -> axis == 0 ? s.x() : axis == 1 ? s.y() : s.z()).sorted().toArray();
    return sorted[sorted.length / 2];
  }

  private static String cell(Vec3 s, int i, int j, int k) {
    return (Math.round(s.x() / CELL) + i) + " " + (Math.round(s.y() / CELL) + j) + " " + (Math.round(s.z() / CELL) + k);
  }
}
