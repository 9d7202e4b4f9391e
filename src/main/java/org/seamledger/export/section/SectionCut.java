package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.detail.KindedJunction;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/**
 * How a junction's faces stand in a section square to its line, so that bent sheets show their true shape. A face that rises across the
 * line by {@code a} in a vertical section rises by {@code atan(tan a · cos i)} in the square one, where {@code i} is the line's own
 * inclination.
 *
 * @param faces by their rise, the lowest first
 * @param fasteners as counted for the junction
 * @param pipeRoomM how far the panel moves past a round penetration; empty where nobody knows, and for all other junctions
 */
record SectionCut(List<Face> faces, List<FastenerRow> fasteners, OptionalDouble pipeRoomM) {

  /** How far beside the line a face is looked for, metres. */
  private static final double BESIDE = 0.02;
  /** A section steeper than this shows nothing. */
  private static final double STEEPEST = 80;

  /**
   * @param riseDegrees away from the line, in the section
   * @param slopeDegrees the face's own
   */
  record Face(String id, double riseDegrees, double slopeDegrees) {
  }

  static SectionCut of(Takeoff takeoff, DetailedJunction detailed) {
    return of(takeoff, detailed, takeoff.faces().stream().filter(f -> detailed.junction().junction().faces().contains(f.id()))
        .collect(Collectors.toMap(RoofFace::id, Function.identity())));
  }

  /** @param all faces of the line at least, by id */
  static SectionCut of(Takeoff takeoff, DetailedJunction detailed, Map<String, RoofFace> all) {
    KindedJunction line = detailed.junction();
    List<RoofFace> beside = line.junction().faces().stream().map(all::get).filter(Objects::nonNull).toList();
    List<FastenerRow> fasteners = takeoff.quantities().byJunction().get(line.junction().id()).fasteners();
    if (line.type().family() == Kind.Family.FIELD) {
      return new SectionCut(beside.stream().flatMap(f -> Stream.of(new Face(f.id(), -f.slopeDegrees(), f.slopeDegrees()),
          new Face(f.id(), f.slopeDegrees(), f.slopeDegrees()))).toList(), fasteners, OptionalDouble.empty());
    }
    List<Face> faces = new ArrayList<>(beside.stream().map(f -> face(f, line.junction().path(), line.type())).toList());
    faces.sort(
        (a, b) -> Math.abs(a.riseDegrees - b.riseDegrees) < 1e-6 ? a.id.compareTo(b.id) : Double.compare(a.riseDegrees, b.riseDegrees));
    return new SectionCut(faces, fasteners,
        line.type().family() == Kind.Family.ROUND ? PipeRoom.of(takeoff, line.junction()) : OptionalDouble.empty());
  }

  private static Face face(RoofFace face, List<Vec3> path, Kind kind) {
    int longest = 1;
    for (int i = 2; i < path.size(); i++) {
      longest = path.get(i - 1).distance(path.get(i)) > path.get(longest - 1).distance(path.get(longest)) ? i : longest;
    }
    Vec3 along = path.get(longest).minus(path.get(longest - 1));
    Vec3 middle = path.get(longest - 1).towards(path.get(longest), 0.5);
    // Round things are cut along the fall.
    if (kind.family() == Kind.Family.ROUND || along.planLength() < 1e-9) {
      return new Face(face.id(), face.slopeDegrees(), face.slopeDegrees());
    }
    Facet facet = nearest(face, middle);
    Vec3 left = new Vec3(-along.y(), along.x(), 0).unit();
    boolean onLeft = distance(facet, middle.plus(left.times(BESIDE))) <= distance(facet, middle.minus(left.times(BESIDE)));
    Vec3 n = facet.plane().normal();
    Vec3 into = onLeft ? left : left.negated();
    double rise = -(n.x() * into.x() + n.y() * into.y()) / n.z();
    double cosine = along.planLength() / along.length();
    double degrees = Math.toDegrees(Math.atan(rise * cosine));
    return new Face(face.id(), Math.max(-STEEPEST, Math.min(STEEPEST, degrees)), facet.plane().slopeDegrees());
  }

  private static Facet nearest(RoofFace face, Vec3 point) {
    Facet best = face.facets().get(0);
    for (Facet f : face.facets()) {
      best = distance(f, point) < distance(best, point) - 1e-9 ? f : best;
    }
    return best;
  }

  private static double distance(Facet facet, Vec3 p) {
    Plane plane = facet.plane();
    Vec3 on = new Vec3(p.x(), p.y(), plane.elevation(p.x(), p.y()));
    return facet.area().distance(new Vec2(plane.u(on), plane.v(on)));
  }
}
