package org.seamledger.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.Vec3;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.layout.Seam;

/**
 * Where wind lifts more: strips along free edges and ridges, and corners where two of them meet. Geometry only, no loads.
 *
 * <p>Width of a strip (ASCE 7 for low-rise buildings, as a steel handbook shows it): {@code a = min(0.1·d, 0.4·h)}, but at least
 * {@code 0.04·d} and 3 ft, d the least horizontal dimension, h the mean roof height; where nobody stated h, d alone counts, which is the
 * wider where h is small. Corner: within a of a free edge and of another edge, ridge or hip that runs otherwise in plan. Distances are
 * plan distances to the lines of the seam's own face.
 */
final class WindZones {

  /** Where clips stand closer, ascending. */
  enum Zone {
    FIELD, EDGE, CORNER
  }

  /** A part of a seam in one zone, from its low end up. */
  record Length(Zone zone, double lengthM) {
  }

  /** A straight piece of an edge or ridge in plan, with its direction. */
  private record Line(Vec3 from, Vec3 to, double dx, double dy, Vec3 unit, boolean free) {

    static Line of(Vec3 from, Vec3 to, boolean free) {
      double dx = to.x() - from.x();
      double dy = to.y() - from.y();
      return new Line(from, to, dx, dy, new Vec3(dx, dy, 0).unit(), free);
    }

    boolean isWithin(double by, double px, double py) {
      double square = dx * dx + dy * dy;
      double t = square == 0 ? 0 : Math.max(0, Math.min(1, ((px - from.x()) * dx + (py - from.y()) * dy) / square));
      double x = px - from.x() - t * dx;
      double y = py - from.y() - t * dy;
      double squared = x * x + y * y;
      // The exact distance takes its time; it counts only where the square, rounded, could say otherwise.
      return Math.abs(squared - by * by) > UNSURE * by * by ? squared < by * by : Math.hypot(x, y) < by;
    }

    /** False where no point of the stretch is nearer than {@code by}. */
    boolean mayReach(Seam.Stretch s, double by) {
      return apart(from.x(), to.x(), s.low().x(), s.high().x()) < by && apart(from.y(), to.y(), s.low().y(), s.high().y()) < by;
    }

    private static double apart(double a, double b, double c, double d) {
      return Math.max(Math.min(a, b) - Math.max(c, d), Math.min(c, d) - Math.max(a, b));
    }

    boolean runsOtherwise(Line o) {
      return Math.abs(unit.x() * o.unit.y() - unit.y() * o.unit.x()) > OTHERWISE;
    }
  }

  /** Sine of 30 degrees: lines that turn by less go on as one edge. */
  private static final double OTHERWISE = 0.5;
  private static final double LEAST_WIDTH = 3 * 0.3048;
  private static final double SAMPLE = 0.25;
  private static final double SHARP = 1e-6;
  private static final double UNSURE = 1e-12;

  private final Map<String, List<Line>> lines = new HashMap<>();
  private final double width;
  private final String basis;
  /** Lines near the point that is looked at; there is room for all of a stretch. */
  private Line[] within = new Line[8];

  private WindZones(double least, double height) {
    double a = height > 0 ? Math.min(0.1 * least, 0.4 * height) : 0.1 * least;
    this.width = Math.max(Math.max(a, 0.04 * least), LEAST_WIDTH);
    this.basis = "0.1 × least plan dimension " + MeasureFormat.formatBoth(least)
        + (height > 0 ? ", 0.4 × mean roof height " + MeasureFormat.formatBoth(height) : ", no roof height stated")
        + "; at least 0.04 × that dimension and 3 ft";
  }

  static WindZones of(OrderSource source) {
    WindZones zones = new WindZones(PlanExtent.leastM(source.takeoff().faces()),
        source.system().purchase().clips().meanRoofHeight().value());
    for (DetailedJunction j : source.takeoff().detailed()) {
      Kind kind = j.junction().type();
      boolean free = kind.family() == Kind.Family.EDGE;
      if (free || kind.family() == Kind.Family.FACES && kind.line() == Kind.Line.RIDGE) {
        List<Vec3> path = j.junction().junction().path();
        for (String face : j.junction().junction().faces()) {
          for (int i = 1; i < path.size(); i++) {
            if (path.get(i).minus(path.get(i - 1)).planLength() > SHARP) {
              zones.lines.computeIfAbsent(face, k -> new ArrayList<>()).add(Line.of(path.get(i - 1), path.get(i), free));
            }
          }
        }
      }
    }
    return zones;
  }

  double widthM() {
    return width;
  }

  String basis() {
    return basis;
  }

  /** The zones along a stretch of seam, from its low end. */
  List<Length> along(String face, Seam.Stretch stretch) {
    List<Line> near = new ArrayList<>();
    for (Line l : lines.getOrDefault(face, List.of())) {
      if (l.mayReach(stretch, width)) {
        near.add(l);
      }
    }
    within = within.length < near.size() ? new Line[2 * near.size()] : within;
    List<Length> parts = new ArrayList<>();
    double length = stretch.lengthM();
    int samples = Math.max(1, (int) Math.ceil(length / SAMPLE));
    double from = 0;
    Zone zone = at(near, stretch, SHARP);
    for (int i = 1; i <= samples; i++) {
      double to = i == samples ? 1 - SHARP : (double) i / samples;
      Zone next = at(near, stretch, to);
      if (next != zone) {
        double change = change(near, stretch, (double) (i - 1) / samples, to, zone);
        parts.add(new Length(zone, (change - from) * length));
        from = change;
        zone = next;
      }
    }
    parts.add(new Length(zone, (1 - from) * length));
    return parts;
  }

  private double change(List<Line> near, Seam.Stretch stretch, double low, double high, Zone before) {
    double a = low;
    double b = high;
    while (b - a > SHARP * SHARP) {
      double middle = (a + b) / 2;
      if (middle == a || middle == b) {
        break;
      }
      if (at(near, stretch, middle) == before) {
        a = middle;
      } else {
        b = middle;
      }
    }
    return b;
  }

  private Zone at(List<Line> near, Seam.Stretch stretch, double share) {
    double x = stretch.low().x() + (stretch.high().x() - stretch.low().x()) * share;
    double y = stretch.low().y() + (stretch.high().y() - stretch.low().y()) * share;
    int n = 0;
    for (Line l : near) {
      if (l.isWithin(width - SHARP, x, y)) {
        within[n++] = l;
      }
    }
    return n == 0 ? Zone.FIELD : isCorner(n) ? Zone.CORNER : Zone.EDGE;
  }

  private boolean isCorner(int n) {
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n && within[i].free(); j++) {
        if (within[i].runsOtherwise(within[j])) {
          return true;
        }
      }
    }
    return false;
  }
}
