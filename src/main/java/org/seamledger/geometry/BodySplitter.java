package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Splits a mesh that holds several bodies. Triangles that share a corner belong together; a part that lies in the box of another may be a
 * hollow in it, so the two stay one mesh, and what is inside follows from the even-odd rule.
 */
public final class BodySplitter {

  private BodySplitter() {
  }

  /** The bodies, in the order of their first triangles; the mesh itself where it is one, or where a part of it would be open. */
  public static List<Mesh> of(Mesh mesh) {
    DisjointSets corners = connected(mesh);
    Map<Integer, List<Integer>> parts = new LinkedHashMap<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      parts.computeIfAbsent(corners.root(mesh.index(t, 0)), k -> new ArrayList<>()).add(t);
    }
    if (parts.size() < 2) {
      return List.of(mesh);
    }
    List<List<Integer>> bodies = withHollows(new ArrayList<>(parts.values()), mesh);
    List<Mesh> meshes = new ArrayList<>();
    for (List<Integer> body : bodies) {
      meshes.add(mesh.part(body));
    }
    return meshes.stream().allMatch(Mesh::isClosed) ? meshes : List.of(mesh);
  }

  private static DisjointSets connected(Mesh mesh) {
    DisjointSets corners = new DisjointSets(mesh.vertexCount());
    for (int t = 0; t < mesh.triangleCount(); t++) {
      corners.join(mesh.index(t, 1), mesh.index(t, 0));
      corners.join(mesh.index(t, 2), mesh.index(t, 0));
    }
    return corners;
  }

  private static List<List<Integer>> withHollows(List<List<Integer>> parts, Mesh mesh) {
    List<Box3> boxes = parts.stream().map(p -> box(p, mesh)).toList();
    Map<Integer, List<Integer>> bodies = new LinkedHashMap<>();
    for (int i = 0; i < parts.size(); i++) {
      int host = i;
      for (int k = 0; k < parts.size(); k++) {
        if (k != i && strictlyInside(boxes.get(i), boxes.get(k))
            && (host == i || boxes.get(k).diagonal() > boxes.get(host).diagonal())) {
          host = k;
        }
      }
      bodies.computeIfAbsent(host, h -> new ArrayList<>()).addAll(parts.get(i));
    }
    return new ArrayList<>(bodies.values());
  }

  private static Box3 box(List<Integer> triangles, Mesh mesh) {
    Box3 box = Box3.EMPTY;
    for (int t : triangles) {
      for (int k = 0; k < 3; k++) {
        box = box.with(mesh.corner(t, k));
      }
    }
    return box;
  }

  private static boolean strictlyInside(Box3 a, Box3 b) {
    return a.minX() > b.minX() && a.minY() > b.minY() && a.minZ() > b.minZ()
        && a.maxX() < b.maxX() && a.maxY() < b.maxY() && a.maxZ() < b.maxZ();
  }
}
