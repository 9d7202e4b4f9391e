package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.seamledger.geometry.DisjointSets;
import org.seamledger.geometry.GreatCircle;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;

/**
 * Tells flat pieces of a curved surface from those of a roof of flat faces, however the curve is cut into them.
 *
 * <p>Pieces that meet turning by less than a step are looked at together by their normals. Those of a barrel or a vault lie on one great
 * circle of the sphere and fill a part of it in many small steps; those of a dome or a cone are many and all turn the same way. The few
 * directions of hips, valleys and tapered roofs do neither.
 */
final class TurningSurfaces {

  /** Of no curve. */
  static final int NONE = -1;

  /** A flat piece: its unit normal, up, and its corners in space, metres. */
  record Flat(Vec3 normal, List<Vec3> corners) {
  }

  /** Two pieces that meet turning by less than a step. */
  record Meet(int a, int b, boolean convex) {
  }

  private final List<Flat> flats;
  private final Tolerance tolerance;
  private final SurfaceLimits.Faces limits;
  private final int[] curve;
  private int curves;

  private TurningSurfaces(List<Flat> flats, Tolerance tolerance, SurfaceLimits.Faces limits) {
    this.flats = flats;
    this.tolerance = tolerance;
    this.limits = limits;
    this.curve = new int[flats.size()];
    Arrays.fill(curve, NONE);
  }

  /** For each piece the number of its curve, or {@link #NONE}. */
  static int[] curves(List<Flat> flats, List<Meet> meets, Tolerance tolerance, SurfaceLimits.Faces limits) {
    TurningSurfaces surfaces = new TurningSurfaces(flats, tolerance, limits);
    surfaces.find(meets);
    return surfaces.curve;
  }

  static double turn(Vec3 a, Vec3 b) {
    return Math.toDegrees(Math.atan2(a.cross(b).length(), a.dot(b)));
  }

  private void find(List<Meet> meets) {
    for (List<Integer> group : groups(meets)) {
      List<Integer> evenly = evenly(group);
      if (isVault(evenly)) {
        number(evenly);
      } else if (isDome(group, meets)) {
        number(group);
      }
    }
  }

  private List<List<Integer>> groups(List<Meet> meets) {
    DisjointSets sets = new DisjointSets(flats.size());
    meets.forEach(m -> sets.join(m.a(), m.b()));
    return sets.sets().stream().map(s -> (List<Integer>) new ArrayList<>(s)).filter(s -> s.size() >= limits.vaultSteps()).toList();
  }

  private void number(List<Integer> members) {
    members.forEach(i -> curve[i] = curves);
    curves++;
  }

  // ---- vaults: normals on one great circle

  /** Without facets much wider than most across the curve: slopes that a curve only joins. */
  private List<Integer> evenly(List<Integer> group) {
    Vec3 axis = axis(group);
    if (axis == null) {
      return group;
    }
    double[] widths = group.stream().mapToDouble(i -> across(i, axis)).toArray();
    double[] sorted = widths.clone();
    Arrays.sort(sorted);
    double most = Math.max(limits.narrowM(), limits.evenWidths() * sorted[sorted.length / 2]);
    List<Integer> even = new ArrayList<>();
    for (int k = 0; k < widths.length; k++) {
      if (widths[k] <= most) {
        even.add(group.get(k));
      }
    }
    return even;
  }

  /** The axis of the great circle near which all normals lie; null where none turns. */
  private Vec3 axis(List<Integer> group) {
    Vec3 first = farthest(group, normal(group.get(0)));
    return turn(first, farthest(group, first)) < limits.sameDegrees() ? null : GreatCircle.axis(group.stream().map(this::normal).toList());
  }

  private Vec3 farthest(List<Integer> group, Vec3 from) {
    Vec3 far = from;
    for (int i : group) {
      far = normal(i).dot(from) < far.dot(from) ? normal(i) : far;
    }
    return far;
  }

  private double across(int i, Vec3 axis) {
    Vec3 d = axis.cross(normal(i));
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Vec3 p : flats.get(i).corners()) {
      double t = d.dot(p);
      low = Math.min(low, t);
      high = Math.max(high, t);
    }
    return high - low;
  }

  private boolean isVault(List<Integer> group) {
    Vec3 axis = group.size() < limits.vaultSteps() ? null : axis(group);
    return axis != null && VaultNormals.areOfOne(group.stream().map(this::normal).toList(), axis, tolerance, limits);
  }

  // ---- domes and cones: many normals, all turning one way

  private boolean isDome(List<Integer> group, List<Meet> meets) {
    if (group.size() < limits.domeFacets()) {
      return false;
    }
    Set<Integer> members = new TreeSet<>(group);
    if (!meets.stream().filter(m -> members.contains(m.a())).allMatch(Meet::convex)) {
      return false;
    }
    List<Vec3> different = new ArrayList<>();
    for (int i : group) {
      if (different.size() < limits.domeFacets() && different.stream().allMatch(n -> turn(n, normal(i)) > limits.sameDegrees())) {
        different.add(normal(i));
      }
    }
    return different.size() >= limits.domeFacets();
  }

  private Vec3 normal(int i) {
    return flats.get(i).normal();
  }
}
