package org.seamledger.export.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.roof.RoofFace;

/**
 * What a picture is to show: a line, or things without one, or the whole roof.
 *
 * @param line corners of the line, local coordinates, metres; empty where no line is meant
 * @param points that must be in the picture, at least one
 * @param lit ids of faces and elements that stand out
 * @param normals unit normals of the faces concerned
 * @param side horizontal unit direction from which a line at the foot of something is seen; zero where there is nothing beside it
 */
public record Sight(List<Vec3> line, List<Vec3> points, Set<String> lit, List<Vec3> normals, Vec3 side) {

  /** So far off a line, in metres, it is looked on which side of it a face lies. */
  private static final double ASIDE = 0.05;

  public Sight {
    line = List.copyOf(line);
    points = List.copyOf(points);
    lit = java.util.Collections.unmodifiableSet(new TreeSet<>(lit));
    normals = List.copyOf(normals);
  }

  /** Where a finding is, or nothing where nothing can be seen at all. */
  public static Optional<Sight> of(Finding finding, RoofScene scene) {
    Junction junction = scene.junctions().get(finding.junction());
    if (junction != null) {
      return Optional.of(of(junction, scene));
    }
    Optional<Sight> elements = ofElements(finding.elements(), scene);
    return elements.isPresent() ? elements : whole(scene);
  }

  private static Sight of(Junction junction, RoofScene scene) {
    Set<String> lit = new TreeSet<>(junction.faces());
    Set<String> carriers = new TreeSet<>();
    List<Vec3> normals = new ArrayList<>();
    for (String id : junction.faces()) {
      RoofFace face = scene.face(id);
      normals.add(face.meanNormal());
      carriers.addAll(face.elements());
    }
    junction.elements().stream().filter(e -> !carriers.contains(e)).forEach(lit::add);
    return new Sight(junction.path(), junction.path(), lit, normals, side(junction, scene));
  }

  /** Square to the line, to where its one face lies, where something else is on the other side. */
  private static Vec3 side(Junction junction, RoofScene scene) {
    if (junction.faces().size() != 1 || junction.facts().word("against").equals("nothing") || junction.path().size() < 2) {
      return Vec3.ZERO;
    }
    Vec3 sum = Vec3.ZERO;
    RoofFace face = scene.face(junction.faces().get(0));
    for (int i = 1; i < junction.path().size(); i++) {
      Vec3 along = junction.path().get(i).minus(junction.path().get(i - 1));
      Vec3 square = new Vec3(-along.y(), along.x(), 0);
      Vec3 middle = junction.path().get(i - 1).towards(junction.path().get(i), 0.5);
      Vec3 step = square.length() < 1e-9 ? Vec3.ZERO : square.unit().times(ASIDE);
      sum = sum.plus(isIn(face, middle.plus(step)) ? square : isIn(face, middle.minus(step)) ? square.negated() : Vec3.ZERO);
    }
    return sum.length() < 1e-6 ? Vec3.ZERO : sum.unit();
  }

  /** Whether a point is above or below a face. */
  private static boolean isIn(RoofFace face, Vec3 p) {
    return face.facets().stream().anyMatch(f -> {
      Vec3 q = new Vec3(p.x(), p.y(), f.plane().elevation(p.x(), p.y()));
      return f.area().contains(new Vec2(f.plane().u(q), f.plane().v(q)));
    });
  }

  private static Optional<Sight> ofElements(List<String> elements, RoofScene scene) {
    Box3 box = Box3.EMPTY;
    Set<String> lit = new TreeSet<>();
    List<Vec3> normals = new ArrayList<>();
    for (String e : elements) {
      Box3 own = scene.bounds(e);
      if (own != null) {
        box = box.union(own);
        lit.add(e);
      }
    }
    for (RoofFace face : scene.takeoff().faces()) {
      if (face.elements().stream().anyMatch(lit::contains)) {
        lit.add(face.id());
        normals.add(face.meanNormal());
      }
    }
    return box.isEmpty() || !box.isBounded() ? Optional.empty() : Optional.of(new Sight(List.of(), corners(box), lit, normals, Vec3.ZERO));
  }

  private static Optional<Sight> whole(RoofScene scene) {
    Box3 box = scene.whole();
    return box.isEmpty() || !box.isBounded() ? Optional.empty()
        : Optional.of(new Sight(List.of(), corners(box), Set.of(), List.of(), Vec3.ZERO));
  }

  static List<Vec3> corners(Box3 b) {
    List<Vec3> corners = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      corners.add(new Vec3((i & 1) == 0 ? b.minX() : b.maxX(), (i & 2) == 0 ? b.minY() : b.maxY(), (i & 4) == 0 ? b.minZ() : b.maxZ()));
    }
    return corners;
  }

  /** Middle of the box round the points. */
  Vec3 centre() {
    return Box3.of(points).centre();
  }

  /** Points where it is looked whether anything is in the way. */
  List<Vec3> samples() {
    if (line.isEmpty()) {
      return List.of(centre());
    }
    List<Vec3> samples = new ArrayList<>();
    double length = length();
    double next = length / 10;
    double gone = 0;
    for (int i = 1; i < line.size(); i++) {
      double step = line.get(i - 1).distance(line.get(i));
      while (step > 0 && next <= gone + step && samples.size() < 5) {
        samples.add(line.get(i - 1).towards(line.get(i), (next - gone) / step));
        next += length / 5;
      }
      gone += step;
    }
    return samples.isEmpty() ? List.of(centre()) : samples;
  }

  double length() {
    double length = 0;
    for (int i = 1; i < line.size(); i++) {
      length += line.get(i - 1).distance(line.get(i));
    }
    return length;
  }
}
