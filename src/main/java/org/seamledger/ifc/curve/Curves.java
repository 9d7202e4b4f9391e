package org.seamledger.ifc.curve;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.placement.Placements;
import org.seamledger.step.Value;

/** IfcCurve and its subtypes; flat curves lie in z = 0. */
public final class Curves {

  /** Points closer than this (metres) are one point of a curve. */
  public static final double SAME = 1e-7;

  private static final double FULL_TURN = 2 * Math.PI;
  private static final int DEEPEST = 60;

  private Curves() {
  }

  /** The whole of a bounded curve as corners, without repetitions; a closed curve ends where it begins. */
  public static List<Vec3> points(Entity e) {
    return points(curve(e));
  }

  public static List<Vec3> points(Curve c) {
    if (Double.isInfinite(c.start())) {
      throw EntityProblem.broken("a curve that should have two ends is an unbounded line");
    }
    return withoutRepeats(c.points(c.start(), c.end()));
  }

  public static List<Vec3> withoutRepeats(List<Vec3> points) {
    List<Vec3> kept = new ArrayList<>(points.size());
    for (Vec3 p : points) {
      if (kept.isEmpty() || kept.get(kept.size() - 1).distance(p) > SAME) {
        kept.add(p);
      }
    }
    return kept;
  }

  public static boolean isClosed(List<Vec3> points) {
    return points.size() > 2 && points.get(0).distance(points.get(points.size() - 1)) <= 10 * SAME;
  }

  public static Curve curve(Entity e) {
    return curve(e, 0);
  }

  private static Curve curve(Entity e, int depth) {
    if (depth > DEEPEST) {
      throw EntityProblem.broken(e + ": curves are nested too deeply");
    }
    return switch (e.keyword()) {
      case "IFCLINE" -> line(e);
      case "IFCCIRCLE" -> conic(e, e.positiveLength(1), e.positiveLength(1));
      case "IFCELLIPSE" -> conic(e, e.positiveLength(1), e.positiveLength(2));
      case "IFCPOLYLINE" -> polyline(e);
      case "IFCINDEXEDPOLYCURVE" -> indexed(e);
      case "IFCTRIMMEDCURVE" -> trimmed(e, depth);
      case "IFCCOMPOSITECURVE", "IFC2DCOMPOSITECURVE", "IFCCOMPOSITECURVEONSURFACE", "IFCBOUNDARYCURVE", "IFCOUTERBOUNDARYCURVE" ->
          composite(e, depth);
      case "IFCBSPLINECURVEWITHKNOTS", "IFCRATIONALBSPLINECURVEWITHKNOTS" -> Splines.withKnots(e);
      case "IFCBEZIERCURVE", "IFCRATIONALBEZIERCURVE" -> Splines.bezier(e);
      case "IFCOFFSETCURVE2D" -> offset(e, depth);
      case "IFCSURFACECURVE", "IFCSEAMCURVE", "IFCINTERSECTIONCURVE" -> curve(e.entity(0), depth + 1);
      case "IFCPCURVE" -> onSurface(e, depth);
      default -> throw EntityProblem.unsupported(e + ": a curve of this kind is not supported");
    };
  }

  private static Curve line(Entity e) {
    Entity vector = e.entity(1);
    double magnitude = vector.length(1);
    if (!(Math.abs(magnitude) > 0)) {
      throw EntityProblem.broken(vector + ": a vector of length zero");
    }
    return new Curve.Line(Placements.point(e.entity(0)), Placements.direction(vector.entity(0)).times(magnitude));
  }

  private static Curve conic(Entity e, double a, double b) {
    return new Curve.Conic(Placements.axes(e.entity(0)), a, b);
  }

  private static Curve polyline(Entity e) {
    List<Vec3> corners = new ArrayList<>();
    for (Entity p : e.entities(0)) {
      corners.add(Placements.point(p));
    }
    return path(e, corners);
  }

  private static Curve path(Entity e, List<Vec3> corners) {
    if (corners.size() < 2) {
      throw EntityProblem.broken(e + ": a curve needs two points or more");
    }
    return Curve.Path.of(corners);
  }

  /** Corners of an IfcCartesianPointList2D or 3D. */
  public static List<Vec3> pointList(Entity e) {
    double metres = e.metres();
    List<Vec3> points = new ArrayList<>();
    for (List<Double> row : e.matrix(0)) {
      points.add(Placements.vector(e, 1, row, metres));
    }
    return points;
  }

  private static Curve indexed(Entity e) {
    List<Vec3> points = pointList(e.entity(0));
    if (!e.has(1)) {
      return path(e, points);
    }
    List<Vec3> corners = new ArrayList<>();
    List<Double> parameters = new ArrayList<>();
    int segment = 0;
    for (Value v : e.list(1)) {
      if (!(v instanceof Value.Typed t)) {
        throw e.mismatch(1, "a list of line and arc indices");
      }
      List<Vec3> part = new ArrayList<>();
      for (int i : e.wholes(t.value(), 1)) {
        if (i < 1 || i > points.size()) {
          throw EntityProblem.broken(e + ": index " + i + " is not among the " + points.size() + " points");
        }
        part.add(points.get(i - 1));
      }
      if (t.keyword().equals("IFCARCINDEX")) {
        part = part.size() == 3 ? arc(part.get(0), part.get(1), part.get(2)) : part;
      }
      for (int i = 0; i < part.size(); i++) {
        if (i == 0 && !corners.isEmpty() && corners.get(corners.size() - 1).distance(part.get(0)) <= SAME) {
          continue;
        }
        corners.add(part.get(i));
        parameters.add(segment + (part.size() > 1 ? i / (part.size() - 1.0) : 0));
      }
      segment++;
    }
    if (corners.size() < 2) {
      throw EntityProblem.broken(e + ": a curve needs two points or more");
    }
    return new Curve.Path(corners, parameters.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** The arc from {@code a} through {@code b} to {@code c}; straight where the three lie in a line. */
  static List<Vec3> arc(Vec3 a, Vec3 b, Vec3 c) {
    Vec3 ab = b.minus(a);
    Vec3 ac = c.minus(a);
    Vec3 n = ab.cross(ac);
    double square = n.dot(n);
    if (Math.sqrt(square) <= 1e-9 * ab.length() * ac.length() || square == 0) {
      return List.of(a, b, c);
    }
    Vec3 toCentre = n.cross(ab).times(ac.dot(ac)).plus(ac.cross(n).times(ab.dot(ab))).times(1 / (2 * square));
    double r = toCentre.length();
    Vec3 centre = a.plus(toCentre);
    Vec3 x = toCentre.times(-1 / r);
    Vec3 z = n.unit();
    Vec3 y = z.cross(x);
    double end = Math.atan2(c.minus(centre).dot(y), c.minus(centre).dot(x));
    List<Vec3> points = new ArrayList<>(new Curve.Conic(Transform.axes(centre, x, y, z), r, r).points(0, end > 0 ? end : end + FULL_TURN));
    points.set(0, a);
    points.set(points.size() - 1, c);
    return points;
  }

  private static Curve trimmed(Entity e, int depth) {
    Curve basis = curve(e.entity(0), depth + 1);
    boolean sense = e.flag(3, true);
    double from = trim(e, 1, basis);
    double to = trim(e, 2, basis);
    if (basis.periodic()) {
      double turn = sense ? 1 : -1;
      double sweep = (to - from) * turn % FULL_TURN;
      // Ends that coincide trim nothing away.
      sweep = sweep < 1e-9 ? sweep + FULL_TURN : sweep;
      to = from + turn * Math.min(sweep, FULL_TURN);
    } else if (sense != to >= from && !Double.isInfinite(basis.start()) && isClosed(points(basis))) {
      List<Vec3> around = new ArrayList<>(basis.points(from, sense ? basis.end() : basis.start()));
      around.addAll(basis.points(sense ? basis.start() : basis.end(), to));
      return path(e, withoutRepeats(around));
    }
    List<Vec3> points = withoutRepeats(basis.points(from, to));
    if (points.size() < 2) {
      throw EntityProblem.broken(e + ": nothing is left of the trimmed curve");
    }
    double[] parameters = new double[points.size()];
    for (int i = 0; i < parameters.length; i++) {
      parameters[i] = Math.abs(to - from) * i / (parameters.length - 1);
    }
    return new Curve.Path(points, parameters);
  }

  /** Parameter of a trimming point; where the model gives both forms and they disagree, the Cartesian point holds. */
  private static double trim(Entity e, int attribute, Curve basis) {
    Double parameter = null;
    Vec3 point = null;
    for (Value v : e.list(attribute)) {
      if (v instanceof Value.Reference r) {
        point = Placements.point(e.model().get(r.id()));
      } else if (v instanceof Value.Typed t && number(t.value()) != null) {
        parameter = number(t.value()) * (basis instanceof Curve.Conic ? e.model().units().radians() : 1);
      } else if (number(v) != null) {
        parameter = number(v) * (basis instanceof Curve.Conic ? e.model().units().radians() : 1);
      }
    }
    if (parameter == null && point == null) {
      throw EntityProblem.broken(e + ": the curve is trimmed at no point");
    }
    boolean preferPoint = e.word(4).equals("CARTESIAN") || parameter == null || !Double.isFinite(parameter);
    if (point != null && (preferPoint || basis.at(parameter).distance(point) > 1e-3)) {
      return basis.parameterAt(point);
    }
    if (parameter == null || !Double.isFinite(parameter)) {
      throw EntityProblem.broken(e + ": the curve is trimmed at no finite parameter");
    }
    return parameter;
  }

  private static Double number(Value v) {
    return v instanceof Value.Real r ? Double.valueOf(r.value()) : v instanceof Value.Whole w ? Double.valueOf(w.value()) : null;
  }

  private static Curve composite(Entity e, int depth) {
    List<Vec3> corners = new ArrayList<>();
    List<Double> parameters = new ArrayList<>();
    double base = 0;
    for (Entity segment : e.entities(0)) {
      if (!segment.is("IFCCOMPOSITECURVESEGMENT") && !segment.is("IFCREPARAMETRISEDCOMPOSITECURVESEGMENT")) {
        throw EntityProblem.unsupported(segment + ": a curve segment of this kind is not supported");
      }
      Curve parent = curve(segment.entity(2), depth + 1);
      List<Vec3> part = new ArrayList<>(points(parent));
      if (!segment.flag(1, true)) {
        Collections.reverse(part);
      }
      join(corners, part);
      double length = parent.end() - parent.start();
      int from = parameters.size();
      int added = corners.size() - from;
      for (int i = 1; i <= added; i++) {
        parameters.add(base + (from == 0 ? length * (i - 1) / Math.max(1, added - 1) : length * i / added));
      }
      base += length;
    }
    if (corners.size() < 2) {
      throw EntityProblem.broken(e + ": a curve needs two points or more");
    }
    return new Curve.Path(corners, parameters.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** Appends a segment; one that is written the wrong way round, but fits when turned, is turned. */
  private static void join(List<Vec3> corners, List<Vec3> part) {
    if (!corners.isEmpty()) {
      Vec3 end = corners.get(corners.size() - 1);
      double ahead = part.get(0).distance(end);
      double back = part.get(part.size() - 1).distance(end);
      if (ahead > 1e-4 && back < 1e-4) {
        Collections.reverse(part);
      }
      if (Math.min(ahead, back) <= 1e-5) {
        part.remove(0);
      }
    }
    corners.addAll(part);
  }

  private static Curve offset(Entity e, int depth) {
    List<Vec3> base = points(curve(e.entity(0), depth + 1));
    return path(e, Offsets.beside(base, e.length(1)));
  }

  /** A curve given in the parameters of a plane. */
  private static Curve onSurface(Entity e, int depth) {
    Entity surface = e.entity(0);
    if (!surface.is("IFCPLANE")) {
      throw EntityProblem.unsupported(e + ": a curve in the parameters of " + surface + " is not supported");
    }
    Transform t = Placements.axes(surface.entity(0));
    return path(e, points(curve(e.entity(1), depth + 1)).stream().map(t::apply).toList());
  }
}
