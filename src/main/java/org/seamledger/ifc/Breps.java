package org.seamledger.ifc;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/** Bodies and sheets given face by face: faceted and advanced BReps, shell-based and face-based surface models. */
final class Breps {

  private final Transform t;
  private final Map<Long, Vec3> corners = new HashMap<>();
  private final Map<Long, List<Vec3>> edges = new HashMap<>();

  private Breps(Transform t) {
    this.t = t;
  }

  /** IfcManifoldSolidBrep: the outer shell without the voids. */
  static Solid brep(Entity e, Transform t) {
    Solid outer = shell(e.entity(0), t);
    if (!e.keyword().endsWith("WITHVOIDS")) {
      return outer;
    }
    List<Solid> voids = new ArrayList<>();
    for (Entity v : e.entities(1)) {
      voids.add(shell(v, t));
    }
    return voids.isEmpty() ? outer : new Solid.Difference(outer, Items.union(voids));
  }

  static Mesh shell(Entity e, Transform t) {
    Mesh.Builder mesh = new Mesh.Builder();
    new Breps(t).addFaces(e, mesh);
    if (mesh.isEmpty()) {
      throw Problem.broken(e + ": the shell has no face with an area");
    }
    return mesh.build();
  }

  /** One mesh a shell; where shells are open by themselves but closed together, they are one. */
  static Solid surfaceModel(Entity e, Transform t) {
    List<Entity> shells = e.entities(0);
    List<Mesh> meshes = new ArrayList<>();
    for (Entity shell : shells) {
      meshes.add(shell(shell, t));
    }
    if (meshes.size() > 1 && !meshes.stream().allMatch(Mesh::isClosed)) {
      Mesh.Builder all = new Mesh.Builder();
      Breps reader = new Breps(t);
      shells.forEach(s -> reader.addFaces(s, all));
      Mesh together = all.build();
      if (together.isClosed()) {
        return together;
      }
    }
    if (meshes.isEmpty()) {
      throw Problem.broken(e + ": the surface model is empty");
    }
    return Items.union(List.copyOf(meshes));
  }

  private void addFaces(Entity shell, Mesh.Builder mesh) {
    for (Entity face : shell.entities(0)) {
      switch (face.keyword()) {
        case "IFCFACE" -> flat(face, mesh);
        case "IFCFACESURFACE", "IFCADVANCEDFACE" -> onSurface(face, mesh);
        default -> throw Problem.unsupported(face + ": a face of this kind is not supported");
      }
    }
  }

  private void flat(Entity face, Mesh.Builder mesh) {
    List<List<Vec3>> loops = loops(face);
    if (!loops.isEmpty()) {
      mesh.face(loops.get(0), loops.subList(1, loops.size()));
    }
  }

  private void onSurface(Entity face, Mesh.Builder mesh) {
    Entity surface = face.entity(1);
    if (surface.is("IFCPLANE")) {
      flat(face, mesh);
    } else {
      throw Problem.unsupported(face + ": faces on " + surface + " are not supported");
    }
  }

  /** The face's closed lines, the outermost first. Which one that is the area says; the file may be wrong. */
  private List<List<Vec3>> loops(Entity face) {
    List<List<Vec3>> loops = new ArrayList<>();
    for (Entity bound : face.entities(0)) {
      List<Vec3> loop = loop(bound.entity(0));
      if (!bound.flag(1, true)) {
        loop = new ArrayList<>(loop);
        Collections.reverse(loop);
      }
      if (loop.size() >= 3) {
        loops.add(loop);
      }
    }
    if (loops.size() > 1) {
      double[] areas = loops.stream().mapToDouble(Breps::area).toArray();
      int outer = 0;
      for (int i = 1; i < areas.length; i++) {
        outer = areas[i] > areas[outer] ? i : outer;
      }
      Collections.swap(loops, 0, outer);
    }
    return loops;
  }

  private static double area(List<Vec3> loop) {
    Vec3 sum = Vec3.ZERO;
    for (int i = 1; i + 1 < loop.size(); i++) {
      sum = sum.plus(loop.get(i).minus(loop.get(0)).cross(loop.get(i + 1).minus(loop.get(0))));
    }
    return sum.length();
  }

  private List<Vec3> loop(Entity e) {
    return switch (e.keyword()) {
      case "IFCPOLYLOOP" -> {
        List<Vec3> points = new ArrayList<>();
        for (long id : e.references(0)) {
          points.add(corner(e.model(), id));
        }
        yield points;
      }
      case "IFCEDGELOOP" -> edgeLoop(e);
      case "IFCVERTEXLOOP" -> List.of();
      default -> throw Problem.unsupported(e + ": a loop of this kind is not supported");
    };
  }

  private Vec3 corner(Model model, long id) {
    Vec3 known = corners.get(id);
    if (known == null) {
      known = t.apply(Placements.point(model.get(id)));
      corners.put(id, known);
    }
    return known;
  }

  private List<Vec3> edgeLoop(Entity e) {
    List<Vec3> points = new ArrayList<>();
    for (Entity oriented : e.entities(0)) {
      List<Vec3> edge = oriented.is("IFCORIENTEDEDGE") ? edge(oriented.entity(2)) : edge(oriented);
      if (oriented.is("IFCORIENTEDEDGE") && !oriented.flag(3, true)) {
        edge = new ArrayList<>(edge);
        Collections.reverse(edge);
      }
      // Every edge gives all its points but the last, which is the next one's first.
      points.addAll(edge.subList(0, edge.size() - 1));
    }
    return points;
  }

  /** Points from the edge's start to its end, the same for every face that the edge bounds. */
  private List<Vec3> edge(Entity e) {
    List<Vec3> known = edges.get(e.id());
    if (known == null) {
      known = Edges.points(e).stream().map(t::apply).toList();
      edges.put(e.id(), known);
    }
    return known;
  }
}
