package org.seamledger.roof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Segment;
import org.seamledger.geometry.Solid.Surface;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;

/**
 * The curved surfaces that elements' own triangles show: triangles that share an edge, turn by less than a step there, and all in all one
 * way, as {@link TurningSurfaces} says. What is next to what is known there, and needs no sections: neighbours that turn by a trace lie in
 * each other's plane as far as a section can tell.
 *
 * <p>Waves, which turn one way as much as the other, are none: that is relief.
 */
final class MeshCurves {

  /** An edge of an element's triangles, whichever way it runs. */
  private record Edge(Part part, Vec3 a, Vec3 b) {
    static Edge of(Part part, Vec3 a, Vec3 b) {
      return order(a, b) <= 0 ? new Edge(part, a, b) : new Edge(part, b, a);
    }

    private static int order(Vec3 a, Vec3 b) {
      int x = Double.compare(a.x(), b.x());
      int y = x != 0 ? x : Double.compare(a.y(), b.y());
      return y != 0 ? y : Double.compare(a.z(), b.z());
    }
  }

  /** A triangle at an edge that it runs along in the edge's own direction, or against it. */
  private record Side(int surface, boolean along) {
  }

  /** How two triangles turn at an edge: the angle (degrees) times the edge's length, negative where they turn inward. */
  private record Turn(int surface, double amount) {
  }

  private final Tolerance tolerance;
  private final SurfaceLimits.Faces limits;
  private final List<SurfacePlanes.Found> found;
  private final List<TurningSurfaces.Meet> meets = new ArrayList<>();
  private final List<Turn> turns = new ArrayList<>();
  private final Map<Surface, Integer> curves = new IdentityHashMap<>();
  private final Map<Plane, Set<Integer>> inPlane = new IdentityHashMap<>();
  private final Map<Surface, List<Segment>> shared = new IdentityHashMap<>();
  private final Map<Plane, List<Segment>> sharedInPlane = new IdentityHashMap<>();

  private MeshCurves(List<SurfacePlanes.Found> found, Tolerance tolerance, SurfaceLimits.Faces limits) {
    this.found = found;
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /** The curves among surfaces whose normals are turned up. */
  static MeshCurves of(List<SurfacePlanes.Found> found, Tolerance tolerance, SurfaceLimits.Faces limits) {
    MeshCurves all = new MeshCurves(found, tolerance, limits);
    all.sides().values().forEach(all::meet);
    all.keep(TurningSurfaces.curves(
        found.stream().map(f -> new TurningSurfaces.Flat(f.surface().plane().normal(), f.surface().corners())).toList(), all.meets,
        tolerance, limits));
    return all;
  }

  private Map<Edge, List<Side>> sides() {
    Map<Edge, List<Side>> sides = new LinkedHashMap<>();
    for (int i = 0; i < found.size(); i++) {
      List<Vec3> p = found.get(i).part().mesh() == null ? List.of() : found.get(i).surface().corners();
      for (int k = 0; k < p.size(); k++) {
        Edge edge = Edge.of(found.get(i).part(), p.get(k), p.get((k + 1) % p.size()));
        sides.computeIfAbsent(edge, e -> new ArrayList<>(2)).add(new Side(i, edge.a().equals(p.get(k)) == isUp(i)));
      }
    }
    return sides;
  }

  /** Whether the corners run counter-clockwise seen from above. */
  private boolean isUp(int i) {
    Surface s = found.get(i).surface();
    Vec3 o = s.corners().get(0);
    return s.corners().get(1).minus(o).cross(s.corners().get(2).minus(o)).dot(s.plane().normal()) > 0;
  }

  /** Triangles that lie on one side of an edge both, as top and underside do at a sharp rim, don't go on in each other. */
  private void meet(List<Side> sides) {
    for (int i = 0; i < sides.size(); i++) {
      for (int j = i + 1; j < sides.size(); j++) {
        if (sides.get(i).along() != sides.get(j).along()) {
          meet(sides.get(i).surface(), sides.get(j).surface());
        }
      }
    }
  }

  private void meet(int a, int b) {
    Surface s = found.get(a).surface();
    Surface t = found.get(b).surface();
    double turn = TurningSurfaces.turn(s.plane().normal(), t.plane().normal());
    if (turn < tolerance.facetTurnDegrees()) {
      List<Vec3> ends = s.corners().stream().filter(t.corners()::contains).toList();
      shared.computeIfAbsent(s, k -> new ArrayList<>(3)).add(new Segment(ends.get(0), ends.get(1)));
      shared.computeIfAbsent(t, k -> new ArrayList<>(3)).add(new Segment(ends.get(0), ends.get(1)));
      double height = t.corners().stream().mapToDouble(s.plane()::height).sum();
      meets.add(new TurningSurfaces.Meet(a, b, height <= tolerance.coincidenceM()));
      turns.add(new Turn(a, turn * ends.get(0).distance(ends.get(1)) * Math.signum(-height)));
    }
  }

  private void keep(int[] curve) {
    Map<Integer, double[]> sums = new HashMap<>();
    for (Turn t : turns) {
      double[] sum = sums.computeIfAbsent(curve[t.surface()], k -> new double[2]);
      sum[0] += t.amount();
      sum[1] += Math.abs(t.amount());
    }
    for (int i = 0; i < curve.length; i++) {
      double[] sum = sums.get(curve[i]);
      if (curve[i] != TurningSurfaces.NONE && Math.abs(sum[0]) > limits.oneWayShare() * sum[1]) {
        curves.put(found.get(i).surface(), curve[i]);
      }
    }
  }

  boolean holds(Surface surface) {
    return curves.containsKey(surface);
  }

  /** Notes that a plane carries a surface. */
  void carry(Plane plane, Surface surface) {
    if (holds(surface)) {
      inPlane.computeIfAbsent(plane, k -> new TreeSet<>()).add(curves.get(surface));
      sharedInPlane.computeIfAbsent(plane, k -> new ArrayList<>()).addAll(shared.getOrDefault(surface, List.of()));
    }
  }

  /** Whether a point of a plane is no farther (metres) from an edge that a part of a curve there shares with the next. */
  boolean isShared(Plane plane, Vec3 at, double withinM) {
    return sharedInPlane.getOrDefault(plane, List.of()).stream().anyMatch(s -> s.distance(at) <= withinM);
  }

  /** Whether a plane carries a part of a curve. */
  boolean isCurved(Plane plane) {
    return inPlane.containsKey(plane);
  }

  /** Whether two planes carry parts of one curve. */
  boolean areOne(Plane a, Plane b) {
    return inPlane.getOrDefault(a, Set.of()).stream().anyMatch(inPlane.getOrDefault(b, Set.of())::contains);
  }
}
