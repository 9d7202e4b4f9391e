package org.seamledger.quantity.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.roof.Facet;

/** Cuts a facet into panels at its seams. */
final class PanelCutter {

  private final Plane plane;
  private final Region area;
  private final double minimumM;
  private final double tolerance;

  PanelCutter(Facet facet, double minimumM, double tolerance) {
    this.plane = facet.plane();
    this.area = facet.area();
    this.minimumM = minimumM;
    this.tolerance = tolerance;
  }

  /**
   * Panels of every pan, each the lowest first: pan i lies between {@code bounds[i − 1]} and {@code bounds[i]}. The area is halved again
   * and again, so that the many holes of a long face are not cut anew for every pan.
   *
   * @param before number of the pan before the first
   */
  List<List<Panel>> pans(List<Double> bounds, int before) {
    List<List<Panel>> pans = new ArrayList<>();
    split(area, bounds, 0, bounds.size() - 1, before, pans);
    return pans;
  }

  private void split(Region part, List<Double> bounds, int from, int to, int before, List<List<Panel>> pans) {
    if (to - from > 1) {
      int middle = (from + to) / 2;
      split(part.cut(1, 0, bounds.get(middle)), bounds, from, middle, before, pans);
      split(part.cut(-1, 0, -bounds.get(middle)), bounds, middle, to, before, pans);
    } else if (to > from) {
      pans.add(panels(before + to, part));
    }
  }

  private List<Panel> panels(int number, Region strip) {
    List<Panel> panels = new ArrayList<>();
    for (Region part : strip.parts()) {
      if (part.maxU() - part.minU() > tolerance && part.maxV() - part.minV() > tolerance) {
        panels.add(panel(number, part));
      }
    }
    return panels;
  }

  /** An edge across the seams, from left to right. */
  private record Cut(Vec2 start, Vec2 run) {
  }

  private Panel panel(int number, Region part) {
    List<Cut> low = new ArrayList<>();
    List<Cut> high = new ArrayList<>();
    List<Cut> lowEnd = new ArrayList<>();
    List<Cut> highEnd = new ArrayList<>();
    for (Region.Ring ring : part.rings()) {
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
    boolean shaped = low.size() > 1 || high.size() > 1 || part.rings().size() > 1;
    return new Panel(number, width, part.maxV() - part.minV(), -bevel(low), bevel(high), part.area(), shaped,
        width < minimumM - tolerance, ends(lowEnd, 1), ends(highEnd, -1));
  }

  private static void note(Region.Ring ring, List<Cut> cuts, Cut cut) {
    if (!ring.hole()) {
      cuts.add(cut);
    }
  }

  /** The cuts that nothing of the panel lies beyond, from the left: those of notches have another one below, or above, them. */
  private List<EndCut> ends(List<Cut> cuts, int sense) {
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
    return new EndCut(plane.at(c.start.u(), c.start.v()), plane.at(to.u(), to.v()), c.start.u(), to.u());
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
