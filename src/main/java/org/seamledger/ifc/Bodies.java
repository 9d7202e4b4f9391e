package org.seamledger.ifc;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Vec3;

/**
 * Splits a face set into bodies. Faces that share a corner belong together; a part that lies in the box of another may be a hollow in
 * it, so the two stay one body, and what is inside follows from the even-odd rule.
 */
final class Bodies {

  /** Corners closer than this (metres) are one. */
  private static final double WELD = 1e-6;

  private Bodies() {
  }

  static List<List<FaceSets.Face>> of(List<FaceSets.Face> faces, List<Vec3> points) {
    int[] parent = new int[points.size()];
    Map<List<Long>, Integer> first = new HashMap<>();
    for (int i = 0; i < parent.length; i++) {
      Vec3 p = points.get(i);
      parent[i] = first.computeIfAbsent(List.of(cell(p.x()), cell(p.y()), cell(p.z())), k -> Integer.MAX_VALUE) == Integer.MAX_VALUE
          ? i : first.get(List.of(cell(p.x()), cell(p.y()), cell(p.z())));
      first.put(List.of(cell(p.x()), cell(p.y()), cell(p.z())), parent[i]);
    }
    for (FaceSets.Face face : faces) {
      for (int[] ring : face.rings()) {
        for (int k : ring) {
          join(parent, face.rings().get(0)[0], k);
        }
      }
    }
    Map<Integer, List<FaceSets.Face>> parts = new LinkedHashMap<>();
    for (FaceSets.Face face : faces) {
      if (face.rings().get(0).length > 0) {
        parts.computeIfAbsent(root(parent, face.rings().get(0)[0]), k -> new ArrayList<>()).add(face);
      }
    }
    return withHollows(new ArrayList<>(parts.values()), points);
  }

  private static long cell(double v) {
    return Math.round(v / WELD);
  }

  private static void join(int[] parent, int a, int b) {
    parent[root(parent, b)] = root(parent, a);
  }

  private static int root(int[] parent, int i) {
    int r = i;
    while (parent[r] != r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  }

  private static List<List<FaceSets.Face>> withHollows(List<List<FaceSets.Face>> parts, List<Vec3> points) {
    List<Box3> boxes = parts.stream().map(p -> box(p, points)).toList();
    int[] host = new int[parts.size()];
    for (int i = 0; i < host.length; i++) {
      host[i] = i;
      for (int k = 0; k < host.length; k++) {
        if (k != i && strictlyInside(boxes.get(i), boxes.get(k))
            && (host[i] == i || boxes.get(k).diagonal() > boxes.get(host[i]).diagonal())) {
          host[i] = k;
        }
      }
    }
    Map<Integer, List<FaceSets.Face>> bodies = new LinkedHashMap<>();
    for (int i = 0; i < host.length; i++) {
      bodies.computeIfAbsent(host[i], k -> new ArrayList<>()).addAll(parts.get(i));
    }
    return new ArrayList<>(bodies.values());
  }

  private static Box3 box(List<FaceSets.Face> faces, List<Vec3> points) {
    Box3 box = Box3.EMPTY;
    for (FaceSets.Face face : faces) {
      for (int i : face.rings().get(0)) {
        box = box.with(points.get(i));
      }
    }
    return box;
  }

  private static boolean strictlyInside(Box3 a, Box3 b) {
    return a.minX() > b.minX() && a.minY() > b.minY() && a.minZ() > b.minZ()
        && a.maxX() < b.maxX() && a.maxY() < b.maxY() && a.maxZ() < b.maxZ();
  }
}
