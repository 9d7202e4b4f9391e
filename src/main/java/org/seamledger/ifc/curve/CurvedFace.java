package org.seamledger.ifc.curve;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.geometry.FlatTriangles;
import org.seamledger.geometry.MeshBuilder;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.EntityProblem;

/**
 * A part of a curved surface as triangles.
 *
 * <ol>
 * <li>The face's lines are followed in the surface's parameters without jumps; lines that go right round the surface are cut open and
 * joined, or led to the pole.
 * <li>The flat polygon in the parameters becomes triangles over its own corners.
 * <li>Edges inside the face that lie too far from the surface are halved until they don't. Edges of the outline stay, so that the face
 * fits its neighbours.
 * </ol>
 */
public final class CurvedFace {

  private static final int ROUNDS = 12;
  private static final int MOST = 200_000;

  private final Surface surface;
  private final boolean same;
  private final Transform t;
  private final List<Vec2> parameters = new ArrayList<>();
  private final List<Vec3> points = new ArrayList<>();
  private final Set<Long> outline = new HashSet<>();
  private List<int[]> triangles;

  /** A line in the parameters with its points; {@code round} is how often it goes round in u. */
  private record Line(List<Vec2> parameters, List<Vec3> points, int round) {
  }

  private CurvedFace(Surface surface, boolean same, Transform t) {
    this.surface = surface;
    this.same = same;
    this.t = t;
  }

  /**
   * Adds the face.
   *
   * @param same true where the loops go counter-clockwise seen from where the surface's normal points to
   * @param t from the surface's coordinates to the loops' ones
   * @param loops in the building's coordinates
   */
  public static void add(Surface surface, boolean same, Transform t, List<List<Vec3>> loops, MeshBuilder mesh) {
    CurvedFace face = new CurvedFace(surface, same, t);
    boolean turned = face.triangulate(loops);
    face.refine();
    for (int[] c : face.triangles) {
      mesh.triangle(face.points.get(c[0]), face.points.get(c[turned ? 2 : 1]), face.points.get(c[turned ? 1 : 2]));
    }
  }

  /** @return true where the outline goes clockwise in the parameters */
  private boolean triangulate(List<List<Vec3>> loops) {
    Transform back = t.inverse();
    List<Line> closed = new ArrayList<>();
    List<Line> round = new ArrayList<>();
    for (List<Vec3> loop : loops) {
      Line line = line(loop, back);
      (line.round() == 0 ? closed : round).add(line);
    }
    Line outer = round.isEmpty() ? largest(closed) : opened(round);
    closed.remove(outer);
    double width = surface.uPeriod();
    List<List<Vec2>> holes = new ArrayList<>();
    add(outer);
    for (Line hole : closed) {
      Line moved = moved(hole, width == 0 ? 0 : width * Math.rint((middle(outer) - middle(hole)) / width));
      add(moved);
      holes.add(scaled(moved.parameters()));
    }
    triangles = FlatTriangles.wellShaped(scaled(outer.parameters()), holes);
    return area(outer.parameters()) < 0;
  }

  private void add(Line line) {
    int first = points.size();
    int n = line.points().size();
    parameters.addAll(line.parameters());
    points.addAll(line.points());
    for (int i = 0; i < n; i++) {
      outline.add(key(first + i, first + (i + 1) % n));
    }
  }

  private Line line(List<Vec3> loop, Transform back) {
    List<Vec2> uv = new ArrayList<>();
    Vec2 last = null;
    for (Vec3 p : loop) {
      last = beside(surface.parameters(back.apply(p), last), last);
      uv.add(last);
    }
    Vec2 end = beside(surface.parameters(back.apply(loop.get(0)), last), last);
    double period = surface.uPeriod();
    int round = period == 0 ? 0 : (int) Math.rint((end.u() - uv.get(0).u()) / period);
    if (surface.vPeriod() > 0 && Math.abs(end.v() - uv.get(0).v()) > surface.vPeriod() / 2) {
      throw EntityProblem.unsupported("a face that goes round its surface the other way is not supported");
    }
    return new Line(uv, loop, round);
  }

  /** The same parameters, whole periods away, as near as possible to {@code last}. */
  private Vec2 beside(Vec2 p, Vec2 last) {
    if (last == null) {
      return p;
    }
    return new Vec2(beside(p.u(), last.u(), surface.uPeriod()), beside(p.v(), last.v(), surface.vPeriod()));
  }

  private static double beside(double x, double last, double period) {
    return period == 0 ? x : x + period * Math.rint((last - x) / period);
  }

  private static Line largest(List<Line> lines) {
    Line best = lines.get(0);
    for (Line l : lines) {
      best = Math.abs(area(l.parameters())) > Math.abs(area(best.parameters())) ? l : best;
    }
    return best;
  }

  private static double area(List<Vec2> ring) {
    double twice = 0;
    for (int i = 0; i < ring.size(); i++) {
      twice += ring.get(i).minus(ring.get(0)).cross(ring.get((i + 1) % ring.size()).minus(ring.get(0)));
    }
    return twice / 2;
  }

  /** One closed line of two that go round, or of one and the pole that it goes round. */
  private Line opened(List<Line> round) {
    Line a = round.get(0);
    double turn = surface.uPeriod() * a.round();
    if (Math.abs(a.round()) != 1 || round.size() > 2) {
      throw EntityProblem.unsupported("a face that goes round its surface more than once is not supported");
    }
    List<Vec2> uv = new ArrayList<>(a.parameters());
    List<Vec3> p = new ArrayList<>(a.points());
    uv.add(new Vec2(uv.get(0).u() + turn, uv.get(0).v()));
    p.add(p.get(0));
    if (round.size() == 1) {
      addPole(uv, p, turn);
    } else {
      addBack(uv, p, turn, round.get(1).round() == a.round() ? reversed(round.get(1)) : round.get(1));
    }
    return new Line(uv, p, 0);
  }

  /** Closes a line that goes round over the pole that it goes round. */
  private void addPole(List<Vec2> uv, List<Vec3> p, double turn) {
    // Seen from where the normal points to, the face lies on the line's left: above a line that runs with u.
    double pole = surface.pole(turn > 0 == same);
    if (Double.isNaN(pole)) {
      throw EntityProblem.unsupported("a face that goes round its surface and ends nowhere is not supported");
    }
    Vec3 tip = t.apply(surface.at(0, pole));
    // The pole is one point, but in the parameters a line: one corner of it above each of the outline's.
    for (int i = p.size() - 1; i >= 0; i--) {
      uv.add(new Vec2(uv.get(i).u(), pole));
      p.add(tip);
    }
  }

  /** Closes a line that goes round by another, which starts where the first one ends and leads back. */
  private static void addBack(List<Vec2> uv, List<Vec3> p, double turn, Line b) {
    Vec2 first = uv.get(0);
    int n = b.points().size();
    int start = 0;
    double best = Double.POSITIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      double gap = Math.abs(beside(b.parameters().get(i).u(), first.u(), Math.abs(turn)) - first.u());
      if (gap < best) {
        best = gap;
        start = i;
      }
    }
    Vec2 last = new Vec2(first.u() + turn, 0);
    for (int i = 0; i <= n; i++) {
      Vec2 q = b.parameters().get((start + i) % n);
      last = new Vec2(beside(q.u(), last.u(), Math.abs(turn)), q.v());
      uv.add(last);
      p.add(b.points().get((start + i) % n));
    }
  }

  private static Line reversed(Line l) {
    List<Vec2> uv = new ArrayList<>(l.parameters());
    List<Vec3> p = new ArrayList<>(l.points());
    Collections.reverse(uv);
    Collections.reverse(p);
    return new Line(uv, p, -l.round());
  }

  private static Line moved(Line l, double by) {
    return new Line(l.parameters().stream().map(q -> new Vec2(q.u() + by, q.v())).toList(), l.points(), l.round());
  }

  private static double middle(Line l) {
    return (l.parameters().stream().mapToDouble(Vec2::u).min().orElse(0) + l.parameters().stream().mapToDouble(Vec2::u).max().orElse(0))
        / 2;
  }

  /** Parameters stretched so that both measure metres, roughly: triangles come out well shaped. */
  private List<Vec2> scaled(List<Vec2> uv) {
    Vec2 m = parameters.get(0);
    double su = surface.at(m.u() + 1e-4, m.v()).distance(surface.at(m.u() - 1e-4, m.v())) / 2e-4;
    double sv = surface.at(m.u(), m.v() + 1e-4).distance(surface.at(m.u(), m.v() - 1e-4)) / 2e-4;
    double u = su > 1e-9 ? su : 1;
    double v = sv > 1e-9 ? sv : 1;
    return uv.stream().map(q -> new Vec2(q.u() * u, q.v() * v)).toList();
  }

  private void refine() {
    for (int round = 0; round < ROUNDS && triangles.size() < MOST; round++) {
      Map<Long, Integer> halves = new HashMap<>();
      for (int[] c : triangles) {
        for (int k = 0; k < 3; k++) {
          halve(c[k], c[(k + 1) % 3], halves);
        }
      }
      List<int[]> next = new ArrayList<>();
      for (int[] c : triangles) {
        split(c, halves, next);
      }
      boolean done = next.size() == triangles.size();
      triangles = next;
      if (done) {
        return;
      }
    }
  }

  private void halve(int i, int k, Map<Long, Integer> halves) {
    long key = key(i, k);
    if (outline.contains(key) || halves.containsKey(key)) {
      return;
    }
    Vec2 uv = parameters.get(i).towards(parameters.get(k), 0.5);
    Vec3 on = t.apply(surface.at(uv.u(), uv.v()));
    if (on.distance(points.get(i).towards(points.get(k), 0.5)) > surface.flatEnough()) {
      parameters.add(uv);
      points.add(on);
      halves.put(key, points.size() - 1);
    }
  }

  private static long key(int i, int k) {
    return (long) Math.min(i, k) << 32 | Math.max(i, k);
  }

  /** Two, three or four triangles for one, as one, two or three of its edges are halved. */
  private void split(int[] c, Map<Long, Integer> halves, List<int[]> next) {
    Integer[] m = new Integer[3];
    int count = 0;
    for (int k = 0; k < 3; k++) {
      m[k] = halves.get(key(c[k], c[(k + 1) % 3]));
      count += m[k] == null ? 0 : 1;
    }
    if (count == 0) {
      next.add(c);
    } else if (count == 3) {
      next.add(new int[] {c[0], m[0], m[2]});
      next.add(new int[] {m[0], c[1], m[1]});
      next.add(new int[] {m[2], m[1], c[2]});
      next.add(new int[] {m[0], m[1], m[2]});
    } else if (count == 1) {
      int k = m[0] != null ? 0 : m[1] != null ? 1 : 2;
      next.add(new int[] {c[k], m[k], c[(k + 2) % 3]});
      next.add(new int[] {m[k], c[(k + 1) % 3], c[(k + 2) % 3]});
    } else {
      // The corner between the two halved edges is cut off.
      int k = m[0] == null ? 2 : m[1] == null ? 0 : 1;
      int a = k;
      int before = m[(a + 2) % 3] == null ? -1 : m[(a + 2) % 3];
      int after = m[a] == null ? -1 : m[a];
      next.add(new int[] {c[a], after, before});
      next.add(new int[] {after, c[(a + 1) % 3], c[(a + 2) % 3]});
      next.add(new int[] {after, c[(a + 2) % 3], before});
    }
  }
}
