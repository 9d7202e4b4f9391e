package org.seamledger.samples;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.triangulate.polygon.PolygonTriangulator;
import org.seamledger.geometry.Vec3;
import org.seamledger.samples.StepText.Ref;

/** Writes bodies by their faces. */
final class FaceWriter {

  private static final GeometryFactory PLANE = new GeometryFactory();

  private final StepText step;
  private final Form form;
  private final BodyWriter bodies;

  FaceWriter(StepText step, Form form, BodyWriter bodies) {
    this.step = step;
    this.form = form;
    this.bodies = bodies;
  }

  // ---- boundary representations with straight edges ----

  Ref brep(Shell shell) {
    List<Ref> faces = new ArrayList<>();
    for (Shell.Face f : shell.faces()) {
      faces.add(face(shell.points(), f));
    }
    return step.add("IFCFACETEDBREP", step.add("IFCCLOSEDSHELL", faces));
  }

  /** The outline alone, as an open shell. */
  Ref sheet(Extrusion e) {
    Shell shell = e.shell();
    Ref face = face(shell.points(), shell.faces().get(0));
    return step.add("IFCSHELLBASEDSURFACEMODEL", List.of(step.add("IFCOPENSHELL", List.of(face))));
  }

  private Ref face(List<Vec3> points, Shell.Face f) {
    List<Ref> bounds = new ArrayList<>();
    bounds.add(step.add("IFCFACEOUTERBOUND", loop(points, f.outer()), true));
    for (List<Integer> hole : f.inner()) {
      bounds.add(step.add("IFCFACEBOUND", loop(points, hole), true));
    }
    return step.add("IFCFACE", bounds);
  }

  private Ref loop(List<Vec3> points, List<Integer> loop) {
    return step.add("IFCPOLYLOOP", loop.stream().map(i -> bodies.point(points.get(i))).toList());
  }

  // ---- face sets ----

  Ref polygons(Shell shell) {
    List<Ref> faces = new ArrayList<>();
    for (Shell.Face f : shell.faces()) {
      faces.add(f.inner().isEmpty()
          ? step.add("IFCINDEXEDPOLYGONALFACE", fromOne(f.outer()))
          : step.add("IFCINDEXEDPOLYGONALFACEWITHVOIDS", fromOne(f.outer()), f.inner().stream().map(FaceWriter::fromOne).toList()));
    }
    return step.add("IFCPOLYGONALFACESET", coordinates(shell), true, faces, null);
  }

  Ref triangles(Shell shell) {
    List<List<Integer>> triangles = new ArrayList<>();
    for (Shell.Face f : shell.faces()) {
      triangulate(shell, f).forEach(t -> triangles.add(fromOne(t)));
    }
    return step.add("IFCTRIANGULATEDFACESET", coordinates(shell), null, true, triangles, null);
  }

  private Ref coordinates(Shell shell) {
    List<?> points = shell.points().stream().map(bodies::lengths).toList();
    return form.schema() == Form.Schema.IFC4X3
        ? step.add("IFCCARTESIANPOINTLIST3D", points, null) : step.add("IFCCARTESIANPOINTLIST3D", points);
  }

  private static List<Integer> fromOne(List<Integer> indices) {
    return indices.stream().map(i -> i + 1).toList();
  }

  /** Triangles of a face, each turning as the face does. */
  private static List<List<Integer>> triangulate(Shell shell, Shell.Face f) {
    Vec3 origin = shell.points().get(f.outer().get(0));
    Vec3 normal = normal(shell.points(), f.outer());
    Vec3 u = shell.points().get(f.outer().get(1)).minus(origin).unit();
    Vec3 v = normal.cross(u);
    Map<Coordinate, Integer> index = new HashMap<>();
    LinearRing outer = ring(shell, f.outer(), origin, u, v, index);
    LinearRing[] inner = f.inner().stream().map(h -> ring(shell, h, origin, u, v, index)).toArray(LinearRing[]::new);
    Geometry parts = PolygonTriangulator.triangulate(PLANE.createPolygon(outer, inner));
    List<List<Integer>> triangles = new ArrayList<>();
    for (int i = 0; i < parts.getNumGeometries(); i++) {
      Coordinate[] c = ((Polygon) parts.getGeometryN(i)).getExteriorRing().getCoordinates();
      List<Integer> t = new ArrayList<>(List.of(index.get(c[0]), index.get(c[1]), index.get(c[2])));
      if (org.locationtech.jts.algorithm.Orientation.index(c[0], c[1], c[2]) < 0) {
        Collections.swap(t, 1, 2);
      }
      triangles.add(t);
    }
    return triangles;
  }

  private static LinearRing ring(Shell shell, List<Integer> loop, Vec3 origin, Vec3 u, Vec3 v, Map<Coordinate, Integer> index) {
    Coordinate[] c = new Coordinate[loop.size() + 1];
    for (int i = 0; i < loop.size(); i++) {
      Vec3 d = shell.points().get(loop.get(i)).minus(origin);
      c[i] = new Coordinate(d.dot(u), d.dot(v));
      index.put(c[i], loop.get(i));
    }
    c[loop.size()] = c[0];
    return PLANE.createLinearRing(c);
  }

  private static Vec3 normal(List<Vec3> points, List<Integer> loop) {
    Vec3 sum = Vec3.ZERO;
    Vec3 o = points.get(loop.get(0));
    for (int i = 1; i + 1 < loop.size(); i++) {
      sum = sum.plus(points.get(loop.get(i)).minus(o).cross(points.get(loop.get(i + 1)).minus(o)));
    }
    return sum.unit();
  }

  // ---- advanced boundary representations ----

  Ref advanced(Body body) {
    return body instanceof Cylinder c ? advanced(c) : advanced(shell(body));
  }

  private Ref advanced(Shell shell) {
    Map<Integer, Ref> vertices = new HashMap<>();
    Map<List<Integer>, Ref> edges = new HashMap<>();
    List<Ref> faces = new ArrayList<>();
    for (Shell.Face f : shell.faces()) {
      List<Ref> bounds = new ArrayList<>();
      bounds.add(step.add("IFCFACEOUTERBOUND", edgeLoop(shell, f.outer(), vertices, edges), true));
      for (List<Integer> hole : f.inner()) {
        bounds.add(step.add("IFCFACEBOUND", edgeLoop(shell, hole, vertices, edges), true));
      }
      Vec3 origin = shell.points().get(f.outer().get(0));
      faces.add(step.add("IFCADVANCEDFACE", bounds, bodies.plane(origin, normal(shell.points(), f.outer())), true));
    }
    return step.add("IFCADVANCEDBREP", step.add("IFCCLOSEDSHELL", faces));
  }

  private Ref edgeLoop(Shell shell, List<Integer> loop, Map<Integer, Ref> vertices, Map<List<Integer>, Ref> edges) {
    List<Ref> oriented = new ArrayList<>();
    for (int k = 0; k < loop.size(); k++) {
      int i = loop.get(k);
      int j = loop.get((k + 1) % loop.size());
      int a = Math.min(i, j);
      int b = Math.max(i, j);
      Ref edge = edges.get(List.of(a, b));
      if (edge == null) {
        edge = edge(shell.points().get(a), vertex(shell, a, vertices), shell.points().get(b), vertex(shell, b, vertices));
        edges.put(List.of(a, b), edge);
      }
      oriented.add(step.add("IFCORIENTEDEDGE", StepText.DERIVED, StepText.DERIVED, edge, i < j));
    }
    return step.add("IFCEDGELOOP", oriented);
  }

  private Ref vertex(Shell shell, int i, Map<Integer, Ref> vertices) {
    Ref known = vertices.get(i);
    if (known == null) {
      known = step.add("IFCVERTEXPOINT", bodies.point(shell.points().get(i)));
      vertices.put(i, known);
    }
    return known;
  }

  private Ref edge(Vec3 a, Ref from, Vec3 b, Ref to) {
    Ref along = step.add("IFCVECTOR", bodies.direction(b.minus(a)), bodies.length(a.distance(b)));
    return step.add("IFCEDGECURVE", from, to, step.add("IFCLINE", bodies.point(a), along), true);
  }

  /** Two discs and a cylindrical face with a seam. */
  private Ref advanced(Cylinder c) {
    Vec3 axis = c.axis().unit();
    Vec3 x = c.across();
    Vec3 top = c.base().plus(c.axis());
    Ref low = step.add("IFCVERTEXPOINT", bodies.point(c.base().plus(x.times(c.radius()))));
    Ref high = step.add("IFCVERTEXPOINT", bodies.point(top.plus(x.times(c.radius()))));
    Ref lowRing = step.add("IFCEDGECURVE", low, low, circle(c.base(), axis, x, c.radius()), true);
    Ref highRing = step.add("IFCEDGECURVE", high, high, circle(top, axis, x, c.radius()), true);
    Ref seam = edge(c.base().plus(x.times(c.radius())), low, top.plus(x.times(c.radius())), high);
    Ref side = step.add("IFCCYLINDRICALSURFACE", bodies.frame(c.base(), axis, x), bodies.length(c.radius()));
    Ref sideLoop = step.add("IFCEDGELOOP", List.of(along(lowRing, true), along(seam, true), along(highRing, false), along(seam, false)));
    List<Ref> faces = List.of(
        step.add("IFCADVANCEDFACE", List.of(step.add("IFCFACEOUTERBOUND", sideLoop, true)), side, true),
        disc(top, axis, x, along(highRing, true)),
        disc(c.base(), axis.negated(), x, along(lowRing, false)));
    return step.add("IFCADVANCEDBREP", step.add("IFCCLOSEDSHELL", faces));
  }

  private Ref along(Ref edge, boolean forward) {
    return step.add("IFCORIENTEDEDGE", StepText.DERIVED, StepText.DERIVED, edge, forward);
  }

  private Ref circle(Vec3 centre, Vec3 axis, Vec3 x, double radius) {
    return step.add("IFCCIRCLE", bodies.frame(centre, axis, x), bodies.length(radius));
  }

  private Ref disc(Vec3 centre, Vec3 normal, Vec3 x, Ref edge) {
    Ref bound = step.add("IFCFACEOUTERBOUND", step.add("IFCEDGELOOP", List.of(edge)), true);
    return step.add("IFCADVANCEDFACE", List.of(bound), step.add("IFCPLANE", bodies.frame(centre, normal, x)), true);
  }

  static Shell shell(Body body) {
    return body instanceof Shell s ? s : body instanceof Cylinder c ? c.faceted().shell() : ((Extrusion) body).shell();
  }

  /** A surface without an inside, by the model's way: a shell of faces, or a set of connected faces. */
  Ref surface(Shell shell, boolean shellBased) {
    List<Ref> faces = shell.faces().stream().map(f -> face(shell.points(), f)).toList();
    return shellBased ? step.add("IFCSHELLBASEDSURFACEMODEL", List.of(step.add("IFCOPENSHELL", faces)))
        : step.add("IFCFACEBASEDSURFACEMODEL", List.of(step.add("IFCCONNECTEDFACESET", faces)));
  }

  static boolean usesFaces(Form.Shape shape) {
    return switch (shape) {
      case BREP, POLYGONS, TRIANGLES, ADVANCED_BREP -> true;
      default -> false;
    };
  }

  Ref byFaces(Body body) {
    Shell shell = shell(body);
    return switch (form.shape()) {
      case BREP -> brep(shell);
      case POLYGONS -> polygons(shell);
      case TRIANGLES -> triangles(shell);
      case ADVANCED_BREP -> advanced(body);
      default -> throw new IllegalStateException();
    };
  }

  /** The name of the representation type. */
  static String typeName(Form.Shape shape) {
    return switch (shape) {
      case BREP -> "Brep";
      case POLYGONS, TRIANGLES -> "Tessellation";
      case ADVANCED_BREP -> "AdvancedBrep";
      default -> throw new IllegalStateException();
    };
  }
}
