package org.seamledger.ifc.solid;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.curve.Curve;
import org.seamledger.ifc.curve.Curves;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.placement.Placements;

/** IfcEdge and its subtypes as points from start to end. */
final class Edges {

  private static final double FULL_TURN = 2 * Math.PI;

  private Edges() {
  }

  static List<Vec3> points(Entity e) {
    Vec3 start = vertex(e.entity(0));
    Vec3 end = vertex(e.entity(1));
    if (!e.is("IFCEDGECURVE")) {
      return List.of(start, end);
    }
    Curve c = Curves.curve(e.entity(2));
    if (c instanceof Curve.Line) {
      return List.of(start, end);
    }
    List<Vec3> points = new ArrayList<>(between(c, start, end, e.flag(3, true)));
    points.set(0, start);
    points.set(points.size() - 1, end);
    return points;
  }

  private static List<Vec3> between(Curve c, Vec3 start, Vec3 end, boolean sense) {
    double from = c.parameterAt(start);
    double to = c.parameterAt(end);
    boolean whole = start.distance(end) <= Curves.SAME;
    if (c.periodic()) {
      double turn = sense ? 1 : -1;
      double sweep = (to - from) * turn % FULL_TURN;
      sweep = sweep < 0 ? sweep + FULL_TURN : sweep;
      return c.points(from, from + turn * (whole ? FULL_TURN : sweep));
    }
    if (whole) {
      return sense ? c.points(c.start(), c.end()) : c.points(c.end(), c.start());
    }
    // Where the curve is closed, the way from one to the other may lead through its begin.
    if (sense != to > from && Curves.isClosed(Curves.points(c))) {
      List<Vec3> around = new ArrayList<>(c.points(from, sense ? c.end() : c.start()));
      around.addAll(c.points(sense ? c.start() : c.end(), to));
      return Curves.withoutRepeats(around);
    }
    List<Vec3> points = c.points(from, to);
    return points.size() < 2 ? List.of(start, end) : points;
  }

  private static Vec3 vertex(Entity e) {
    if (!e.is("IFCVERTEXPOINT")) {
      throw EntityProblem.broken(e + " stands where a vertex point should");
    }
    return Placements.point(e.entity(0));
  }
}
