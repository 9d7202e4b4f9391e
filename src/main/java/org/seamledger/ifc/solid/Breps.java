package org.seamledger.ifc.solid;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.BodySplitter;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.MeshBuilder;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.curve.CurvedFace;
import org.seamledger.ifc.curve.Surfaces;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Model;
import org.seamledger.ifc.placement.Placements;

/** Bodies and sheets given face by face: faceted and advanced BReps, shell-based and face-based surface models. */
final class Breps {

  private final Transform t;
  private final Map<Long, Vec3> corners = new HashMap<>();
  private final Map<Long, List<Vec3>> edges = new HashMap<>();

  private Breps(Transform t) {
    this.t = t;
  }

  /**
   * A face whose corners are known.
   *
   * @param surface what a face that is not flat lies on, or null
   * @param same true where the face's normal is the surface's
   * @param t from the surface's coordinates to the corners'
   * @param loops the outermost first
   */
  private record Face(Entity surface, boolean same, Transform t, List<List<Vec3>> loops) {
  }

  /** IfcManifoldSolidBrep: the outer shell without the voids. */
  static Solid brep(Entity e, Transform t) {
    return draft(e, t).solid().get();
  }

  /** The same with its corners read, but no mesh made. */
  static Draft draft(Entity e, Transform t) {
    Entity shell = e.entity(0);
    List<Face> outer = new Breps(t).faces(shell);
    return new Draft(box(outer), () -> Items.guarded(e, () -> brep(e, t, mesh(shell, outer))));
  }

  private static Solid brep(Entity e, Transform t, Mesh shell) {
    Solid outer = Items.union(List.copyOf(BodySplitter.of(shell)));
    if (!e.keyword().endsWith("WITHVOIDS")) {
      return outer;
    }
    List<Solid> voids = new ArrayList<>();
    for (Entity v : e.members(1)) {
      voids.add(shell(v, t));
    }
    return voids.isEmpty() ? outer : new Solid.Difference(outer, Items.union(voids));
  }

  private static Box3 box(List<Face> faces) {
    Box3 box = Box3.EMPTY;
    for (Face face : faces) {
      for (List<Vec3> loop : face.loops()) {
        for (Vec3 p : loop) {
          box = box.with(p);
        }
      }
    }
    return box;
  }

  static Mesh shell(Entity e, Transform t) {
    return mesh(e, new Breps(t).faces(e));
  }

  private static Mesh mesh(Entity shell, List<Face> faces) {
    MeshBuilder mesh = new MeshBuilder();
    add(faces, mesh);
    if (mesh.isEmpty()) {
      throw EntityProblem.broken(shell + ": the shell has no face with an area");
    }
    return mesh.build();
  }

  private static void add(List<Face> faces, MeshBuilder mesh) {
    for (Face face : faces) {
      if (face.surface() == null) {
        mesh.face(face.loops().get(0), face.loops().subList(1, face.loops().size()));
      } else {
        curved(face, mesh);
      }
    }
  }

  private static void curved(Face face, MeshBuilder mesh) {
    try {
      CurvedFace.add(Surfaces.curved(face.surface()), face.same(), face.t(), face.loops(), mesh);
    } catch (IllegalArgumentException x) {
      throw EntityProblem.broken("a face on " + face.surface() + ": " + x.getMessage());
    }
  }

  /** One mesh a shell; where shells are open by themselves but closed together, they are one. */
  static Solid surfaceModel(Entity e, Transform t) {
    Breps reader = new Breps(t);
    List<Mesh> meshes = new ArrayList<>();
    MeshBuilder all = new MeshBuilder();
    for (Entity shell : e.members(0)) {
      List<Face> faces = reader.faces(shell);
      meshes.add(mesh(shell, faces));
      add(faces, all);
    }
    if (meshes.isEmpty()) {
      throw EntityProblem.broken(e + ": the surface model is empty");
    }
    if (meshes.size() > 1 && !meshes.stream().allMatch(Mesh::isClosed)) {
      Mesh together = all.build();
      if (together.isClosed()) {
        return together;
      }
    }
    return Items.union(meshes.stream().flatMap(m -> BodySplitter.of(m).stream()).map(m -> (Solid) m).toList());
  }

  private List<Face> faces(Entity shell) {
    List<Face> faces = new ArrayList<>();
    for (Entity face : shell.members(0)) {
      Entity surface = switch (face.keyword()) {
        case "IFCFACE" -> null;
        case "IFCFACESURFACE", "IFCADVANCEDFACE" -> face.entity(1);
        default -> throw EntityProblem.unsupported(face + ": a face of this kind is not supported");
      };
      List<List<Vec3>> loops = loops(face);
      if (!loops.isEmpty()) {
        faces.add(new Face(isFlat(surface) ? null : surface, surface == null || face.flag(2, true), t, loops));
      }
    }
    return faces;
  }

  private static boolean isFlat(Entity surface) {
    return surface == null || surface.is("IFCPLANE") || surface.is("IFCCURVEBOUNDEDPLANE");
  }

  /** The face's closed lines, the outermost first. Which one that is the area says; the file may be wrong. */
  private List<List<Vec3>> loops(Entity face) {
    List<List<Vec3>> loops = new ArrayList<>();
    for (Entity bound : face.members(0)) {
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
      default -> throw EntityProblem.unsupported(e + ": a loop of this kind is not supported");
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
