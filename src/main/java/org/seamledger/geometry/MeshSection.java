package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The section of a mesh with a plane. Each triangle that the plane separates gives one segment between two mesh edges; segments that share
 * a mesh edge form closed lines, and lines that a tear leaves open are joined where their ends lie together.
 */
final class MeshSection {

  /** A ring of sheets wider than this (metres) goes round a room; a narrower one is the skin of a wall. */
  private static final double WIDEST_WALL = 1;

  private final Mesh mesh;
  private final Plane plane;
  private final double[] height;
  private final double coincidence;

  /** @param coincidence corners within this distance of the plane (metres) lie in it */
  MeshSection(Mesh mesh, Plane plane, double coincidence) {
    this.mesh = mesh;
    this.plane = plane;
    this.height = mesh.heights(plane);
    this.coincidence = coincidence;
  }

  /** What the plane cuts, corners in it counted to the far side; empty where all corners are on one side. */
  Region crossing(SectionSide side) {
    double near = near(side, coincidence);
    return isSeparated(near) ? Region.evenOdd(chains(links(near))) : Region.EMPTY;
  }

  /** The lines in which the plane cuts a sheet, as wide as what lies together on either side; closed lines round what is narrow filled. */
  Region cutSheet(SectionSide side) {
    double near = near(side, coincidence);
    if (!isSeparated(near)) {
      return Region.EMPTY;
    }
    List<Region> parts = new ArrayList<>();
    for (List<Vec2> line : chains(links(near))) {
      boolean isRing = line.size() > 3 && line.get(0).distance(line.get(line.size() - 1)) <= coincidence;
      Region ring = isRing ? Region.polygon(line) : Region.EMPTY;
      parts.add(ring.isEmpty() || !ring.isNarrowerThan(WIDEST_WALL) ? Region.alongLine(line, coincidence) : ring);
    }
    return Region.unionOf(parts);
  }

  private static double near(SectionSide side, double coincidence) {
    return side == SectionSide.BELOW ? coincidence : -coincidence;
  }

  private boolean isSeparated(double near) {
    boolean any = false;
    boolean all = true;
    for (double h : height) {
      boolean above = h > -near;
      any |= above;
      all &= above;
    }
    return any && !all;
  }

  /** By mesh edge that the plane crosses, the edges that triangles link it to. */
  private Map<Long, List<Long>> links(double near) {
    Map<Long, List<Long>> links = new LinkedHashMap<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      long first = -1;
      for (int k = 0; k < 3; k++) {
        int i = mesh.index(t, k);
        int j = mesh.index(t, (k + 1) % 3);
        if (height[i] > -near != height[j] > -near) {
          long key = Mesh.edgeKey(i, j);
          if (first < 0) {
            first = key;
          } else {
            links.computeIfAbsent(first, x -> new ArrayList<>(2)).add(key);
            links.computeIfAbsent(key, x -> new ArrayList<>(2)).add(first);
          }
        }
      }
    }
    return links;
  }

  /** Closed lines first joined along shared mesh edges, then, where a mesh is torn, by ends that lie together. */
  private List<List<Vec2>> chains(Map<Long, List<Long>> links) {
    List<List<Vec2>> open = new ArrayList<>();
    for (Long start : List.copyOf(links.keySet())) {
      while (links.get(start).size() % 2 == 1) {
        open.add(walk(start, links));
      }
    }
    List<List<Vec2>> rings = new ArrayList<>(joined(open, coincidence));
    for (Long start : List.copyOf(links.keySet())) {
      while (!links.get(start).isEmpty()) {
        rings.add(walk(start, links));
      }
    }
    return rings;
  }

  private static List<List<Vec2>> joined(List<List<Vec2>> open, double reach) {
    List<List<Vec2>> rings = new ArrayList<>();
    List<List<Vec2>> rest = new ArrayList<>(open);
    while (!rest.isEmpty()) {
      List<Vec2> ring = new ArrayList<>(rest.remove(0));
      for (int i = 0; i < rest.size(); i++) {
        List<Vec2> piece = rest.get(i);
        Vec2 end = ring.get(ring.size() - 1);
        boolean forward = piece.get(0).distance(end) <= reach;
        if (forward || piece.get(piece.size() - 1).distance(end) <= reach) {
          List<Vec2> next = new ArrayList<>(piece);
          if (!forward) {
            Collections.reverse(next);
          }
          ring.addAll(next.subList(1, next.size()));
          rest.remove(i);
          i = -1;
        }
      }
      rings.add(ring);
    }
    return rings;
  }

  /** Follows links from {@code start}, using each once, until there is none left where it stands. */
  private List<Vec2> walk(long start, Map<Long, List<Long>> links) {
    List<Vec2> chain = new ArrayList<>();
    long here = start;
    chain.add(crossingPoint(here));
    while (!links.get(here).isEmpty()) {
      List<Long> next = links.get(here);
      long there = next.remove(next.size() - 1);
      links.get(there).remove((Long) here);
      here = there;
      chain.add(crossingPoint(here));
    }
    return chain;
  }

  private Vec2 crossingPoint(long edge) {
    int i = (int) (edge >> 32);
    int j = (int) edge;
    Vec3 p;
    if (Math.abs(height[i]) <= coincidence) {
      p = mesh.vertex(i);
    } else if (Math.abs(height[j]) <= coincidence) {
      p = mesh.vertex(j);
    } else {
      p = mesh.vertex(i).towards(mesh.vertex(j), height[i] / (height[i] - height[j]));
    }
    return new Vec2(plane.u(p), plane.v(p));
  }
}
