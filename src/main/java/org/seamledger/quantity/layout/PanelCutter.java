package org.seamledger.quantity.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.Facet;

/** Cuts a facet into panels at its seams. */
final class PanelCutter {

  /** Corners of a panel and of the one before it. */
  private static final int LAST = 8;

  private final Plane plane;
  private final Region area;
  private final double minimumM;
  private final double tolerance;
  private final CrossLines lines;
  private final List<Across> across = new ArrayList<>();
  private final Vec2[] lastCorners = new Vec2[LAST];
  private final Vec3[] lastAt = new Vec3[LAST];
  private int next;

  /** Where one panel is divided: at v, from the left to the right, of a length that it would have in one. */
  private record Across(double v, double fromU, double toU, double runM) {
  }

  /** @param lines that divide panels which are too long */
  PanelCutter(Facet facet, double minimumM, double tolerance, CrossLines lines) {
    this.plane = facet.plane();
    this.area = facet.area();
    this.minimumM = minimumM;
    this.tolerance = tolerance;
    this.lines = lines;
  }

  /**
   * Panels of every pan, each the lowest first: pan i lies between {@code bounds[i − 1]} and {@code bounds[i]}.
   *
   * @param before number of the pan before the first
   */
  List<List<Panel>> pans(List<Double> bounds, int before) {
    List<List<Panel>> pans = new ArrayList<>();
    for (Region strip : area.strips(bounds)) {
      pans.add(panels(before + pans.size() + 1, strip));
    }
    return pans;
  }

  private List<Panel> panels(int number, Region strip) {
    List<Panel> panels = new ArrayList<>();
    for (Region part : strip.parts()) {
      if (part.maxU() - part.minU() > tolerance && part.maxV() - part.minV() > tolerance) {
        divide(number, part, panels);
      }
    }
    return panels;
  }

  private void divide(int number, Region part, List<Panel> panels) {
    List<Double> at = lines.through(part.minV(), part.maxV());
    at.forEach(v -> note(part, v));
    if (at.isEmpty() || !lines.apart()) {
      panels.add(panel(number, part, lengths(part.minV(), at, part.maxV())));
      return;
    }
    Region rest = part;
    for (double v : at) {
      rest.cut(0, 1, v).parts().forEach(p -> panels.add(panel(number, p, List.of(p.maxV() - p.minV()))));
      rest = rest.cut(0, -1, -v);
    }
    rest.parts().forEach(p -> panels.add(panel(number, p, List.of(p.maxV() - p.minV()))));
  }

  private static List<Double> lengths(double low, List<Double> at, double high) {
    List<Double> lengths = new ArrayList<>();
    double from = low;
    for (double v : at) {
      lengths.add(v - from);
      from = v;
    }
    lengths.add(high - from);
    return lengths;
  }

  private void note(Region part, double v) {
    for (Region.Ring ring : part.cut(0, 1, v).rings()) {
      List<Vec2> p = ring.points();
      for (int i = 0; i < p.size(); i++) {
        Vec2 a = p.get(i);
        Vec2 b = p.get((i + 1) % p.size());
        if (Math.abs(a.v() - v) < tolerance && Math.abs(b.v() - v) < tolerance && a.u() - b.u() > tolerance) {
          across.add(new Across(v, b.u(), a.u(), part.maxV() - part.minV()));
        }
      }
    }
  }

  /** The lines at which panels were divided, from the lowest and the left, those of neighbours joined. */
  List<CrossLine> crossLines() {
    List<Across> joined = new ArrayList<>();
    across.stream().sorted(Comparator.comparingDouble(Across::v).thenComparingDouble(Across::fromU)).forEach(a -> {
      Across last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
      if (last != null && Math.abs(last.v - a.v) < tolerance && Math.abs(last.toU - a.fromU) < 2 * tolerance) {
        joined.set(joined.size() - 1, new Across(last.v, last.fromU, a.toU, Math.max(last.runM, a.runM)));
      } else {
        joined.add(a);
      }
    });
    return joined.stream().map(a -> new CrossLine(plane.at(a.fromU, a.v), plane.at(a.toU, a.v), a.runM)).toList();
  }

  /** An edge across the seams, from left to right. */
  private record Cut(Vec2 start, Vec2 run) {
  }

  private Panel panel(int number, Region part, List<Double> piecesM) {
    List<Cut> low = new ArrayList<>();
    List<Cut> high = new ArrayList<>();
    List<Cut> lowEnd = new ArrayList<>();
    List<Cut> highEnd = new ArrayList<>();
    List<Region.Ring> rings = part.rings();
    for (Region.Ring ring : rings) {
      List<Vec2> p = ring.points();
      for (int i = 0; i < p.size(); i++) {
        Vec2 from = p.get(i);
        Vec2 to = p.get((i + 1) % p.size());
        // Outsides turn counter-clockwise: the low side runs to the right, the high side to the left.
        if (to.u() - from.u() > tolerance) {
          add(low, new Cut(from, to.minus(from)));
          note(ring, lowEnd, new Cut(from, to.minus(from)));
        } else if (from.u() - to.u() > tolerance) {
          add(high, new Cut(to, from.minus(to)));
          note(ring, highEnd, new Cut(to, from.minus(to)));
        }
      }
    }
    double width = part.maxU() - part.minU();
    boolean shaped = low.size() > 1 || high.size() > 1 || rings.size() > 1;
    return new Panel(number, width, part.maxV() - part.minV(), -bevel(low), bevel(high), part.area(), shaped,
        width < minimumM - tolerance, ends(lowEnd, 1), ends(highEnd, -1), piecesM);
  }

  private static void note(Region.Ring ring, List<Cut> cuts, Cut cut) {
    if (!ring.hole()) {
      cuts.add(cut);
    }
  }

  /** The cuts that nothing of the panel lies beyond, from the left: those of notches have another one below, or above, them. */
  private List<EndCut> ends(List<Cut> cuts, int sense) {
    if (cuts.size() == 1) {
      return List.of(end(cuts.get(0)));
    }
    List<Cut> outermost = new ArrayList<>();
    cuts.stream().sorted(Comparator.comparingDouble(c -> sense * (c.start.v() + c.run.v() / 2))).forEach(c -> {
      double hidden = outermost.stream().mapToDouble(o -> overlap(o, c)).sum();
      if (hidden <= c.run.u() / 2) {
        outermost.add(c);
      }
    });
    return outermost.stream().sorted(Comparator.comparingDouble(c -> c.start.u())).map(this::end).toList();
  }

  private static double overlap(Cut a, Cut b) {
    return Math.max(0, Math.min(a.start.u() + a.run.u(), b.start.u() + b.run.u()) - Math.max(a.start.u(), b.start.u()));
  }

  private EndCut end(Cut c) {
    Vec2 to = c.start.plus(c.run);
    return new EndCut(corner(c.start), corner(to), c.start.u(), to.u());
  }

  /** A corner in space; neighbours along a seam have the same two, which are then the same objects. */
  private Vec3 corner(Vec2 p) {
    for (int i = 0; i < LAST; i++) {
      if (p.equals(lastCorners[i])) {
        return lastAt[i];
      }
    }
    lastCorners[next] = p;
    lastAt[next] = plane.at(p.u(), p.v());
    Vec3 at = lastAt[next];
    next = (next + 1) % LAST;
    return at;
  }

  /** Joins a cut to one that it continues. */
  private void add(List<Cut> cuts, Cut cut) {
    for (int i = 0; i < cuts.size(); i++) {
      Cut known = cuts.get(i);
      double reach = tolerance * Math.max(known.run.length(), cut.run.length());
      Vec2 between = cut.start.minus(known.start);
      if (Math.abs(known.run.cross(cut.run)) <= reach * known.run.length()
          && Math.abs(known.run.cross(between)) <= tolerance * known.run.length()) {
        cuts.set(i, new Cut(between.u() < 0 ? cut.start : known.start, known.run.plus(cut.run)));
        return;
      }
    }
    cuts.add(cut);
  }

  /** Rise of the widest cut, degrees: positive where it rises to the right. */
  private static double bevel(List<Cut> cuts) {
    Vec2 widest = null;
    for (Cut c : cuts) {
      if (widest == null || c.run.u() > widest.u()) {
        widest = c.run;
      }
    }
    double degrees = widest == null ? 0 : Math.toDegrees(Math.atan2(widest.v(), widest.u()));
    return degrees == 0 ? 0 : degrees;
  }
}
