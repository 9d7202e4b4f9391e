package org.seamledger.export.view;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.seamledger.element.Element;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/** All that can be seen of a takeoff: the roof's faces, the bodies round them, and their sharp edges. Made once, for many pictures. */
public final class RoofScene {

  /** Surfaces of one body that turn by less (cosine) have no edge between them. */
  private static final double SMOOTH = Math.cos(Math.toRadians(20));
  /** An upper surface of a roof element is drawn as a face, not as a body. */
  private static final double UPWARD = 0.05;
  private static final double MILLIMETRE = 1000;

  private final Takeoff takeoff;
  private final List<Flat> flats = new ArrayList<>();
  private final List<Edge> edges = new ArrayList<>();
  private final Map<String, RoofFace> faces = new HashMap<>();
  private final Map<String, Junction> junctions = new LinkedHashMap<>();
  private final Map<String, Box3> bounds = new HashMap<>();
  private final Box3 whole;

  /** A sharp edge of a body. */
  record Edge(Vec3 from, Vec3 to) {
  }

  public RoofScene(Takeoff takeoff) {
    this.takeoff = takeoff;
    takeoff.faces().forEach(this::add);
    TreeSet<String> inFaces = new TreeSet<>();
    takeoff.faces().forEach(f -> inFaces.addAll(f.elements()));
    List<Flat> bodies = new ArrayList<>();
    for (Element e : takeoff.surroundings().roofs()) {
      bounds.merge(e.globalId(), e.bounds(), Box3::union);
      BodyFlats.each(e, true, f -> {
        if (!inFaces.contains(e.globalId()) || Math.abs(f.normal().z()) < UPWARD) {
          bodies.add(f);
        }
      });
    }
    for (Element e : takeoff.surroundings().neighbours()) {
      bounds.merge(e.globalId(), e.bounds(), Box3::union);
      BodyFlats.each(e, false, bodies::add);
    }
    flats.addAll(bodies);
    addEdges(bodies);
    takeoff.lines().forEach(j -> junctions.put(j.junction().junction().id(), j.junction().junction()));
    whole = flats.stream().flatMap(f -> f.rings().stream()).map(Box3::of).reduce(Box3.EMPTY, Box3::union);
  }

  private void add(RoofFace face) {
    faces.put(face.id(), face);
    for (Facet facet : face.facets()) {
      List<List<Vec3>> rings = BodyFlats.rings(facet.plane(), facet.area());
      if (!rings.isEmpty()) {
        flats.add(Flat.of(face.id(), true, facet.plane().normal(), rings));
        face.elements().forEach(e -> rings.forEach(ring -> bounds.merge(e, Box3.of(ring), Box3::union)));
      }
    }
  }

  /** Where two surfaces of one body meet, by their ends to the millimetre. */
  private record Meeting(String owner, List<Long> low, List<Long> high) {
  }

  private void addEdges(List<Flat> bodies) {
    Map<Meeting, List<Vec3>> normals = new HashMap<>();
    Map<Meeting, Edge> found = new LinkedHashMap<>();
    for (Flat flat : bodies) {
      for (List<Vec3> ring : flat.rings()) {
        for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
          Meeting meeting = meeting(flat.owner(), ring.get(j), ring.get(i));
          normals.computeIfAbsent(meeting, m -> new ArrayList<>()).add(flat.normal());
          found.putIfAbsent(meeting, new Edge(ring.get(j), ring.get(i)));
        }
      }
    }
    found.forEach((meeting, edge) -> {
      if (isSharp(normals.get(meeting))) {
        edges.add(edge);
      }
    });
  }

  private static Meeting meeting(String owner, Vec3 a, Vec3 b) {
    List<Long> p = rounded(a);
    List<Long> q = rounded(b);
    boolean inOrder = p.toString().compareTo(q.toString()) < 0;
    return new Meeting(owner, inOrder ? p : q, inOrder ? q : p);
  }

  private static List<Long> rounded(Vec3 p) {
    return List.of(Math.round(p.x() * MILLIMETRE), Math.round(p.y() * MILLIMETRE), Math.round(p.z() * MILLIMETRE));
  }

  private static boolean isSharp(List<Vec3> normals) {
    return normals.size() == 1 || normals.stream().anyMatch(n -> Math.abs(n.dot(normals.get(0))) < SMOOTH);
  }

  List<Flat> flats() {
    return flats;
  }

  List<Edge> edges() {
    return edges;
  }

  Map<String, Junction> junctions() {
    return junctions;
  }

  /** The face of an id, or null. */
  RoofFace face(String id) {
    return faces.get(id);
  }

  /** Box of an element, or null where nothing of it is here. */
  Box3 bounds(String globalId) {
    return bounds.get(globalId);
  }

  /** Box of all that can be seen. */
  Box3 whole() {
    return whole;
  }

  Takeoff takeoff() {
    return takeoff;
  }
}
