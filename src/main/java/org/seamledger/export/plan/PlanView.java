package org.seamledger.export.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.Facet;
import org.seamledger.takeoff.Takeoff;

/**
 * A roof, or a part of it, seen from above on paper.
 *
 * @param denominator n of the scale 1:n
 * @param low least x and y of what is shown, metres
 * @param high greatest x and y
 * @param window where that lies on paper
 * @param column place among the parts from west to east, 0 for the first; -1 for the whole roof
 * @param row from south to north
 */
public record PlanView(double denominator, Vec2 low, Vec2 high, PaperBox window, int column, int row) {

  /** Up to this scale a whole roof needs no enlarged parts: lines of a metre take a centimetre. */
  private static final double READABLE = 100;
  private static final int MOST_PARTS = 12;
  /** Paper around the roof, for tags outside its edges. */
  private static final double MARGIN = 11;

  private static final double[] SCALES = {5, 10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 1250, 1500, 2000, 2500,
      5000, 10_000, 20_000, 50_000};

  /** The whole roof at the greatest scale at which it has room. */
  static PlanView whole(Takeoff takeoff, PaperBox room) {
    List<Vec3> all = points(takeoff);
    double minX = all.stream().mapToDouble(Vec3::x).min().orElse(0);
    double minY = all.stream().mapToDouble(Vec3::y).min().orElse(0);
    Vec2 low = new Vec2(minX, minY);
    Vec2 high = new Vec2(all.stream().mapToDouble(Vec3::x).max().orElse(minX + 1), all.stream().mapToDouble(Vec3::y).max().orElse(minY + 1));
    PaperBox inner = room.inset(MARGIN);
    double n = SCALES[SCALES.length - 1];
    for (int i = SCALES.length - 1; i >= 0; i--) {
      boolean fits = (high.u() - low.u()) * 1000 / SCALES[i] <= inner.width() && (high.v() - low.v()) * 1000 / SCALES[i] <= inner.height();
      n = fits ? SCALES[i] : n;
    }
    return new PlanView(n, low, high, centred(room, low, high, n), -1, -1);
  }

  /** The parts of a roof that one sheet shows too small, each on a sheet of its own; none where the whole is large enough. */
  static List<PlanView> parts(Takeoff takeoff, PlanView whole, PaperBox room) {
    if (whole.denominator <= READABLE) {
      return List.of();
    }
    PaperBox inner = room.inset(MARGIN);
    for (double n : SCALES) {
      int columns = (int) Math.ceil((whole.high.u() - whole.low.u()) * 1000 / n / inner.width() - 1e-9);
      int rows = (int) Math.ceil((whole.high.v() - whole.low.v()) * 1000 / n / inner.height() - 1e-9);
      if (n >= READABLE && n < whole.denominator && (long) columns * rows <= MOST_PARTS) {
        return tiles(takeoff, whole, room, n, columns, rows);
      }
    }
    return List.of();
  }

  private static List<PlanView> tiles(Takeoff takeoff, PlanView whole, PaperBox room, double n, int columns, int rows) {
    List<PlanView> parts = new ArrayList<>();
    List<Vec3> points = points(takeoff);
    double width = (whole.high.u() - whole.low.u()) / columns;
    double depth = (whole.high.v() - whole.low.v()) / rows;
    for (int row = rows - 1; row >= 0; row--) {
      for (int column = 0; column < columns; column++) {
        Vec2 low = whole.low.plus(new Vec2(column * width, row * depth));
        Vec2 high = low.plus(new Vec2(width, depth));
        PlanView part = new PlanView(n, low, high, centred(room, low, high, n), column, row);
        if (points.stream().anyMatch(part::shows)) {
          parts.add(part);
        }
      }
    }
    return parts;
  }

  private static PaperBox centred(PaperBox room, Vec2 low, Vec2 high, double n) {
    Vec2 half = high.minus(low).times(500 / n);
    Vec2 m = room.middle();
    return new PaperBox(m.u() - half.u(), m.v() - half.v(), m.u() + half.u(), m.v() + half.v());
  }

  private static List<Vec3> points(Takeoff takeoff) {
    Stream<Vec3> lines = takeoff.junctions().stream().flatMap(j -> j.junction().path().stream());
    return Stream.concat(lines, takeoff.faces().stream().flatMap(f -> f.facets().stream()).flatMap(PlanView::corners)).toList();
  }

  private static Stream<Vec3> corners(Facet facet) {
    return facet.area().rings().stream().flatMap(r -> r.points().stream()).map(p -> facet.plane().at(p.u(), p.v()));
  }

  boolean isWhole() {
    return column < 0;
  }

  /** Whether a place of the roof lies in what is shown. */
  boolean shows(Vec3 p) {
    return p.x() >= low.u() - 1e-6 && p.x() <= high.u() + 1e-6 && p.y() >= low.v() - 1e-6 && p.y() <= high.v() + 1e-6;
  }

  /** Millimetres on paper from metres of the roof. */
  public Vec2 paper(Vec3 p) {
    return new Vec2(window.left() + (p.x() - low.u()) * 1000 / denominator, window.bottom() - (p.y() - low.v()) * 1000 / denominator);
  }

  /** The longest stretch of a path within a place on paper, as two points; empty where none lies in it. */
  List<Vec2> longestStretch(List<Vec3> path, PaperBox place) {
    List<Vec2> longest = List.of();
    double most = -1;
    for (int i = 1; i < path.size(); i++) {
      List<Vec2> kept = clipped(paper(path.get(i - 1)), paper(path.get(i)), place);
      if (!kept.isEmpty() && kept.get(0).distance(kept.get(1)) > most + 1e-9) {
        longest = kept;
        most = kept.get(0).distance(kept.get(1));
      }
    }
    return longest;
  }

  /** A segment cut to a place (Liang and Barsky). */
  private static List<Vec2> clipped(Vec2 a, Vec2 b, PaperBox place) {
    double from = 0;
    double to = 1;
    double[][] sides = {{a.u() - b.u(), a.u() - place.left()}, {b.u() - a.u(), place.right() - a.u()}, {a.v() - b.v(), a.v() - place.top()},
        {b.v() - a.v(), place.bottom() - a.v()}};
    for (double[] side : sides) {
      if (Math.abs(side[0]) < 1e-12) {
        if (side[1] < 0) {
          return List.of();
        }
      } else if (side[0] < 0) {
        from = Math.max(from, side[1] / side[0]);
      } else {
        to = Math.min(to, side[1] / side[0]);
      }
    }
    return from > to ? List.of() : List.of(a.towards(b, from), a.towards(b, to));
  }
}
