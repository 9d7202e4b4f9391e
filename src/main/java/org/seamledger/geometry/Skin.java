package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Bodies stretched over cross-sections that follow one another: extrusions, tapers, revolutions, sweeps along a line.
 *
 * <p>Every cross-section has the same rings with the same numbers of points. Neighbouring sections are joined by two triangles for
 * each edge; the first and the last are closed by caps unless the sections go round.
 */
public final class Skin {

  private Skin() {
  }

  /**
   * One body over the sections.
   *
   * @param sections in order, two or more; each a list of rings, the outside first
   * @param round true where the last section is joined to the first, and no caps are made
   * @throws IllegalArgumentException if the sections differ in their numbers of rings or points
   */
  public static Mesh over(List<List<List<Vec3>>> sections, boolean round) {
    MeshBuilder mesh = new MeshBuilder();
    int joints = round ? sections.size() : sections.size() - 1;
    for (int s = 0; s < joints; s++) {
      join(mesh, sections.get(s), sections.get((s + 1) % sections.size()));
    }
    if (!round) {
      cap(mesh, sections.get(0).stream().map(Skin::reversed).toList());
      cap(mesh, sections.get(sections.size() - 1));
    }
    return mesh.build();
  }

  /** The prism over an outline: {@code place} puts the outline's plane into space, {@code along} is the way to its other end. */
  public static Mesh prism(PolygonOutline outline, Transform place, Vec3 along) {
    List<List<Vec3>> base = placed(outline, place);
    if (!outline.hasDistinctCorners()) {
      // Where a hole touches the outside, corners have to be welded.
      return over(List.of(base, base.stream().map(ring -> ring.stream().map(along::plus).toList()).toList()), false);
    }
    int n = base.stream().mapToInt(List::size).sum();
    double[] xyz = new double[6 * n];
    int[] sides = new int[6 * n];
    int first = 0;
    for (List<Vec3> ring : base) {
      for (int i = 0; i < ring.size(); i++) {
        int a = first + i;
        int b = first + (i + 1) % ring.size();
        put(xyz, a, ring.get(i));
        put(xyz, a + n, ring.get(i).plus(along));
        put(sides, 6 * a, a, b, b + n);
        put(sides, 6 * a + 3, a, b + n, a + n);
      }
      first += ring.size();
    }
    List<int[]> caps = FlatTriangles.of(outline.outer(), outline.holes());
    int[] triangles = Arrays.copyOf(sides, 6 * n + 6 * caps.size());
    for (int i = 0; i < caps.size(); i++) {
      int[] c = caps.get(i);
      put(triangles, 6 * n + 6 * i, c[2], c[1], c[0]);
      put(triangles, 6 * n + 6 * i + 3, c[0] + n, c[1] + n, c[2] + n);
    }
    return Mesh.closed(xyz, triangles);
  }

  private static void put(double[] xyz, int i, Vec3 p) {
    xyz[3 * i] = p.x();
    xyz[3 * i + 1] = p.y();
    xyz[3 * i + 2] = p.z();
  }

  private static void put(int[] triangles, int at, int a, int b, int c) {
    triangles[at] = a;
    triangles[at + 1] = b;
    triangles[at + 2] = c;
  }

  /** The rings of an outline that lies in the xy-plane of {@code place}. */
  public static List<List<Vec3>> placed(PolygonOutline outline, Transform place) {
    List<List<Vec3>> rings = new ArrayList<>();
    for (List<Vec2> ring : outline.rings()) {
      List<Vec3> points = new ArrayList<>(ring.size());
      for (Vec2 p : ring) {
        points.add(place.apply(new Vec3(p.u(), p.v(), 0)));
      }
      rings.add(points);
    }
    return rings;
  }

  private static void join(MeshBuilder mesh, List<List<Vec3>> a, List<List<Vec3>> b) {
    if (a.size() != b.size()) {
      throw new IllegalArgumentException("the sections to be joined have " + a.size() + " and " + b.size() + " rings");
    }
    for (int r = 0; r < a.size(); r++) {
      List<Vec3> p = a.get(r);
      List<Vec3> q = b.get(r);
      if (p.size() != q.size()) {
        throw new IllegalArgumentException("the sections to be joined have " + p.size() + " and " + q.size() + " corners");
      }
      for (int i = 0; i < p.size(); i++) {
        int k = (i + 1) % p.size();
        mesh.triangle(p.get(i), p.get(k), q.get(k));
        mesh.triangle(p.get(i), q.get(k), q.get(i));
      }
    }
  }

  private static void cap(MeshBuilder mesh, List<List<Vec3>> rings) {
    mesh.face(rings.get(0), rings.subList(1, rings.size()));
  }

  private static List<Vec3> reversed(List<Vec3> ring) {
    List<Vec3> back = new ArrayList<>(ring);
    Collections.reverse(back);
    return back;
  }
}
