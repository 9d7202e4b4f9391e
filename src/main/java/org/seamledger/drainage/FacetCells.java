package org.seamledger.drainage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.BoundaryEdge;

/** A facet divided into cells by lines along its slope through every corner of its outline; a level one is a single pool. */
final class FacetCells {

  /** Corners whose u differ by less (metres) are on one line. */
  private static final double SAME = 1e-7;

  final int facet;
  final String face;
  final Plane plane;
  /** Null for a facet that slopes. */
  final Node pool;
  /** By slab, from the least u up; from the lowest up in each. */
  final List<List<Cell>> slabs = new ArrayList<>();
  private final double[] breaks;

  /** An edge in the facet's frame, from its least u. */
  private record Span(int edge, double u0, double v0, double u1, double v1, boolean low) {
    double at(double u) {
      return v0 + (v1 - v0) * Math.max(0, Math.min(1, (u - u0) / (u1 - u0)));
    }
  }

  /**
   * @param planAreaM2 of the facet; a pool has it, cells add up to it
   * @param edges outline of the facet: index and edge
   */
  FacetCells(int facet, String face, Plane plane, boolean level, double planAreaM2, List<Integer> numbers, List<BoundaryEdge> edges) {
    this.facet = facet;
    this.face = face;
    this.plane = plane;
    if (level) {
      this.pool = new Node(WaterPlace.face(face), face, 0, 1);
      pool.water.add(0, 1, planAreaM2, planAreaM2);
      this.breaks = new double[0];
      return;
    }
    this.pool = null;
    List<Span> spans = new ArrayList<>();
    for (int number : numbers) {
      span(number, edges.get(number), spans);
    }
    this.breaks = breaks(spans);
    fill(spans);
  }

  private void span(int number, BoundaryEdge e, List<Span> spans) {
    Vec2 a = inPlane(e.from());
    Vec2 b = inPlane(e.to());
    if (b.u() - a.u() > SAME) {
      spans.add(new Span(number, a.u(), a.v(), b.u(), b.v(), true));
    } else if (a.u() - b.u() > SAME) {
      spans.add(new Span(number, b.u(), b.v(), a.u(), a.v(), false));
    }
  }

  Vec2 inPlane(Vec3 p) {
    return new Vec2(plane.u(p), plane.v(p));
  }

  private static double[] breaks(List<Span> spans) {
    double[] all = spans.stream().flatMapToDouble(s -> java.util.stream.DoubleStream.of(s.u0, s.u1)).sorted().toArray();
    List<Double> apart = new ArrayList<>();
    for (double u : all) {
      if (apart.isEmpty() || u - apart.get(apart.size() - 1) > SAME) {
        apart.add(u);
      }
    }
    return apart.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private void fill(List<Span> spans) {
    List<Span> waiting = new ArrayList<>(spans);
    waiting.sort(Comparator.comparingDouble(Span::u0).thenComparingInt(Span::edge));
    List<Span> active = new ArrayList<>();
    int next = 0;
    for (int i = 0; i + 1 < breaks.length; i++) {
      double mid = (breaks[i] + breaks[i + 1]) / 2;
      active.removeIf(s -> s.u1 < mid);
      while (next < waiting.size() && waiting.get(next).u0 < mid) {
        if (waiting.get(next).u1 > mid) {
          active.add(waiting.get(next));
        }
        next++;
      }
      active.sort(Comparator.comparingDouble((Span s) -> s.at(mid)).thenComparing((Span s) -> s.low));
      slabs.add(slab(active, breaks[i], breaks[i + 1]));
    }
  }

  /** Edges below and above take turns; where rounding or touching rings break that, an area counts from the nearest edge below it. */
  private List<Cell> slab(List<Span> active, double u0, double u1) {
    List<Cell> cells = new ArrayList<>();
    Span low = null;
    for (Span s : active) {
      if (s.low) {
        low = s;
      } else if (low != null) {
        Cell cell = new Cell(new Node(WaterPlace.face(face), face, u0, u1), low.edge, s.edge, low.at(u0), low.at(u1), s.at(u0), s.at(u1));
        double nz = Math.abs(plane.normal().z());
        cell.node().water.add(u0, u1, (cell.highAtFrom() - cell.lowAtFrom()) * nz, (cell.highAtTo() - cell.lowAtTo()) * nz);
        cells.add(cell);
        low = null;
      }
    }
    return cells;
  }

  /** Cells whose extent along u comes within {@code slack} metres. */
  List<Cell> near(double u, double slack) {
    List<Cell> found = new ArrayList<>();
    for (int i = Math.max(0, slabAt(u - slack)); i < slabs.size() && breaks[i] <= u + slack; i++) {
      if (breaks[i + 1] >= u - slack) {
        found.addAll(slabs.get(i));
      }
    }
    return found;
  }

  private int slabAt(double u) {
    int at = java.util.Arrays.binarySearch(breaks, u);
    return at >= 0 ? Math.max(0, at - 1) : -at - 2;
  }

  /** The cell in which a point of the facet's plane lies, or else the nearest one above, below or beside it; null for a facet of none. */
  Cell at(Vec2 p) {
    Cell best = null;
    double least = Double.POSITIVE_INFINITY;
    int slab = Math.max(0, Math.min(slabs.size() - 1, slabAt(p.u())));
    for (int reach = 0; best == null && reach < slabs.size(); reach++) {
      for (int i : new int[] {slab - reach, slab + reach}) {
        for (Cell c : i < 0 || i >= slabs.size() ? List.<Cell>of() : slabs.get(i)) {
          double out = c.outside(p.u(), p.v());
          if (out < least) {
            least = out;
            best = c;
          }
        }
      }
    }
    return best;
  }

  /** Whether a point of the facet's plane lies in it. */
  boolean contains(Vec2 p) {
    return near(p.u(), 0).stream().anyMatch(c -> c.outside(p.u(), p.v()) == 0);
  }

  /** The point of the plane straight above or below. */
  Vec2 under(Vec3 p) {
    return inPlane(new Vec3(p.x(), p.y(), plane.elevation(p.x(), p.y())));
  }

  /** Bounds of slabs strictly between two values, ascending. */
  List<Double> breaksBetween(double from, double to) {
    List<Double> found = new ArrayList<>();
    for (int i = Math.max(0, slabAt(from)); i < breaks.length && breaks[i] < to; i++) {
      if (breaks[i] > from) {
        found.add(breaks[i]);
      }
    }
    return found;
  }
}
