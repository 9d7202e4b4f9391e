package org.seamledger.ifc.solid;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.BodySplitter;
import org.seamledger.geometry.MeshBuilder;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.curve.Curves;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.step.Value;

/** IfcTessellatedFaceSet: polygonal and triangulated face sets. Indices count from 1. */
final class FaceSets {

  /** A face by its corners; the outside first, then holes. */
  record Face(List<int[]> rings) {
  }

  private FaceSets() {
  }

  static Solid polygonal(Entity e, Transform t) {
    List<Face> faces = new ArrayList<>();
    for (Entity face : e.members(2)) {
      List<int[]> rings = new ArrayList<>();
      rings.add(face.wholes(0));
      if (face.is("IFCINDEXEDPOLYGONALFACEWITHVOIDS")) {
        for (Value hole : face.list(1)) {
          rings.add(face.wholes(hole, 1));
        }
      } else if (!face.is("IFCINDEXEDPOLYGONALFACE")) {
        throw EntityProblem.unsupported(face + ": a face of this kind is not supported");
      }
      faces.add(new Face(rings));
    }
    return solid(e, faces, e.has(3) ? e.wholes(3) : null, t);
  }

  static Solid triangulated(Entity e, Transform t) {
    List<Face> faces = new ArrayList<>();
    for (Value triangle : e.list(3)) {
      int[] corners = e.wholes(triangle, 3);
      if (corners.length != 3) {
        throw e.mismatch(3, "a list of triangles");
      }
      faces.add(new Face(List.of(corners)));
    }
    return solid(e, faces, hasPointIndex(e) ? e.wholes(4) : null, t);
  }

  /** The first edition of IFC4 had the normals' indices in this place: a list of lists. */
  private static boolean hasPointIndex(Entity e) {
    return e.has(4) && e.list(4).stream().noneMatch(v -> v instanceof Value.Aggregate);
  }

  private static Solid solid(Entity e, List<Face> faces, int[] indirect, Transform t) {
    List<Vec3> points = Curves.pointList(e.entity(0)).stream().map(t::apply).toList();
    MeshBuilder mesh = new MeshBuilder();
    for (Face face : resolved(e, faces, indirect, points.size())) {
      List<List<Vec3>> rings = face.rings().stream().map(r -> ring(r, points)).toList();
      mesh.face(rings.get(0), rings.subList(1, rings.size()));
    }
    if (mesh.isEmpty()) {
      throw EntityProblem.broken(e + ": the face set has no face with an area");
    }
    return Items.union(List.copyOf(BodySplitter.of(mesh.build())));
  }

  private static List<Vec3> ring(int[] indices, List<Vec3> points) {
    List<Vec3> ring = new ArrayList<>(indices.length);
    for (int i : indices) {
      ring.add(points.get(i));
    }
    return ring;
  }

  /** The faces with indices into the points, from 0. */
  private static List<Face> resolved(Entity e, List<Face> faces, int[] indirect, int points) {
    List<Face> resolved = new ArrayList<>(faces.size());
    for (Face face : faces) {
      List<int[]> rings = new ArrayList<>();
      for (int[] ring : face.rings()) {
        int[] out = new int[ring.length];
        for (int k = 0; k < ring.length; k++) {
          int i = indirect == null ? ring[k] : checked(e, ring[k], indirect.length) ? indirect[ring[k] - 1] : 0;
          checked(e, i, points);
          out[k] = i - 1;
        }
        rings.add(out);
      }
      resolved.add(new Face(rings));
    }
    return resolved;
  }

  private static boolean checked(Entity e, int i, int most) {
    if (i < 1 || i > most) {
      throw EntityProblem.broken(e + ": index " + i + " is not among the " + most + " points");
    }
    return true;
  }
}
