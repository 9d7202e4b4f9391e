package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * A part of a plane in the plane's own coordinates, metres: any number of polygons with holes, immutable.
 *
 * <p>Overlays are robust: they round to a grid of 0.1 micrometres, and never fail on touching or coinciding edges.
 */
public final class Region {

  private static final PrecisionModel GRID = new PrecisionModel(1e7);
  private static final GeometryFactory FACTORY = new GeometryFactory(GRID);

  public static final Region EMPTY = new Region(FACTORY.createPolygon());

  private final Geometry geometry;

  private Region(Geometry geometry) {
    this.geometry = geometry;
  }

  /** A closed line of a region's outline: counter-clockwise round an outside, clockwise round a hole, first point not repeated. */
  public record Ring(List<Vec2> points, boolean hole) {
    public Ring {
      points = List.copyOf(points);
    }
  }

  public static Region rectangle(double minU, double minV, double maxU, double maxV) {
    return evenOdd(List.of(List.of(new Vec2(minU, minV), new Vec2(maxU, minV), new Vec2(maxU, maxV), new Vec2(minU, maxV))));
  }

  /** One polygon, closed by itself; crossing itself is mended by the even-odd rule. */
  public static Region polygon(List<Vec2> ring) {
    return evenOdd(List.of(ring));
  }

  /** The points that an odd number of the rings go round. Rings with fewer than three points are nothing. */
  public static Region evenOdd(Collection<List<Vec2>> rings) {
    List<Geometry> areas = new ArrayList<>();
    for (List<Vec2> ring : rings) {
      Geometry one = ringArea(ring);
      if (!one.isEmpty()) {
        areas.add(one);
      }
    }
    return areas.isEmpty() ? EMPTY : of(combined(areas, OverlayNG.SYMDIFFERENCE));
  }

  /** Joined two by two, so that an outline with many rings is not overlaid anew for each of them. */
  private static Geometry combined(List<Geometry> areas, int operation) {
    if (areas.size() == 1) {
      return areas.get(0);
    }
    int half = areas.size() / 2;
    return overlay(combined(areas.subList(0, half), operation), combined(areas.subList(half, areas.size()), operation), operation);
  }

  private static Geometry ringArea(List<Vec2> ring) {
    List<Coordinate> coordinates = new ArrayList<>(ring.size() + 1);
    for (Vec2 p : ring) {
      Coordinate c = new Coordinate(GRID.makePrecise(p.u()), GRID.makePrecise(p.v()));
      if (coordinates.isEmpty() || !coordinates.get(coordinates.size() - 1).equals2D(c)) {
        coordinates.add(c);
      }
    }
    while (coordinates.size() > 1 && coordinates.get(0).equals2D(coordinates.get(coordinates.size() - 1))) {
      coordinates.remove(coordinates.size() - 1);
    }
    if (coordinates.size() < 3) {
      return FACTORY.createPolygon();
    }
    coordinates.add(new Coordinate(coordinates.get(0)));
    Polygon polygon = FACTORY.createPolygon(coordinates.toArray(Coordinate[]::new));
    return polygon.isValid() ? polygon : GeometryFixer.fix(polygon);
  }

  public static Region unionOf(Collection<Region> regions) {
    List<Geometry> areas = regions.stream().filter(r -> !r.isEmpty()).map(r -> r.geometry).toList();
    return areas.isEmpty() ? EMPTY : of(combined(areas, OverlayNG.UNION));
  }

  public boolean isEmpty() {
    return geometry.isEmpty();
  }

  public double area() {
    return geometry.getArea();
  }

  /** Length of all rings, holes included. */
  public double perimeter() {
    return geometry.getLength();
  }

  public Region union(Region o) {
    return isEmpty() ? o : o.isEmpty() ? this : of(overlay(geometry, o.geometry, OverlayNG.UNION));
  }

  public Region minus(Region o) {
    return isEmpty() || o.isEmpty() || apart(o) ? this : of(overlay(geometry, o.geometry, OverlayNG.DIFFERENCE));
  }

  public Region intersect(Region o) {
    return isEmpty() || o.isEmpty() || apart(o) ? EMPTY : of(overlay(geometry, o.geometry, OverlayNG.INTERSECTION));
  }

  private boolean apart(Region o) {
    return !geometry.getEnvelopeInternal().intersects(o.geometry.getEnvelopeInternal());
  }

  /** The part where {@code a·u + b·v < c}. */
  public Region cut(double a, double b, double c) {
    if (isEmpty()) {
      return this;
    }
    Envelope e = geometry.getEnvelopeInternal();
    double pad = 1 + 0.01 * (e.getWidth() + e.getHeight());
    List<Vec2> corners = List.of(new Vec2(e.getMinX() - pad, e.getMinY() - pad), new Vec2(e.getMaxX() + pad, e.getMinY() - pad),
        new Vec2(e.getMaxX() + pad, e.getMaxY() + pad), new Vec2(e.getMinX() - pad, e.getMaxY() + pad));
    List<Vec2> kept = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      Vec2 p = corners.get(i);
      Vec2 q = corners.get((i + 1) % 4);
      double fp = a * p.u() + b * p.v() - c;
      double fq = a * q.u() + b * q.v() - c;
      if (fp < 0) {
        kept.add(p);
      }
      if (fp < 0 != fq < 0) {
        kept.add(p.towards(q, fp / (fp - fq)));
      }
    }
    return kept.size() == 4 && kept.equals(corners) ? this : intersect(polygon(kept));
  }

  /** Moved by (du, dv). */
  public Region moved(double du, double dv) {
    return isEmpty() ? this
        : of(org.locationtech.jts.geom.util.AffineTransformation.translationInstance(du, dv).transform(geometry));
  }

  /** Grown by {@code by} metres all round with sharp corners; shrunk where {@code by} is negative. */
  public Region grown(double by) {
    if (isEmpty() || by == 0) {
      return this;
    }
    BufferParameters sharp = new BufferParameters(1, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 4);
    return of(BufferOp.bufferOp(geometry, by, sharp));
  }

  /** The connected parts, each with its holes, ordered by their lowest, then leftmost corner. */
  public List<Region> parts() {
    List<Region> parts = new ArrayList<>();
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      if (geometry.getGeometryN(i) instanceof Polygon p && !p.isEmpty()) {
        parts.add(new Region(p));
      }
    }
    parts.sort(Comparator.comparingDouble(Region::minV).thenComparingDouble(Region::minU).thenComparingDouble(Region::area));
    return parts;
  }

  /** Every ring of the outline, outsides counter-clockwise, holes clockwise, in a fixed order. */
  public List<Ring> rings() {
    List<Ring> rings = new ArrayList<>();
    for (Region part : parts()) {
      Polygon p = (Polygon) part.geometry.norm();
      rings.add(ring(p.getExteriorRing(), false));
      for (int i = 0; i < p.getNumInteriorRing(); i++) {
        rings.add(ring(p.getInteriorRingN(i), true));
      }
    }
    return rings;
  }

  private static Ring ring(LinearRing line, boolean hole) {
    Coordinate[] c = line.getCoordinates();
    List<Vec2> points = new ArrayList<>(c.length - 1);
    double twice = 0;
    for (int i = 0; i + 1 < c.length; i++) {
      twice += c[i].x * c[i + 1].y - c[i + 1].x * c[i].y;
      points.add(new Vec2(c[i].x, c[i].y));
    }
    if (twice < 0 != hole) {
      java.util.Collections.reverse(points);
    }
    return new Ring(points, hole);
  }

  /** Without its holes. */
  public Region filled() {
    Region sum = EMPTY;
    for (Region part : parts()) {
      sum = sum.union(new Region(FACTORY.createPolygon(((Polygon) part.geometry).getExteriorRing().getCoordinates())));
    }
    return sum;
  }

  /** True where no circle of this diameter (metres) fits in. */
  public boolean isNarrowerThan(double width) {
    return isEmpty() || geometry.buffer(-width / 2).isEmpty();
  }

  /**
   * Without corners that lie within {@code by} metres of the line between their neighbours, and without spikes no wider than that; every
   * other corner stays where it is, to the bit.
   */
  public Region simplified(double by) {
    List<List<Vec2>> rings = new ArrayList<>();
    for (Ring ring : rings()) {
      rings.add(withoutFlatCorners(ring.points(), by));
    }
    return evenOdd(rings);
  }

  private static List<Vec2> withoutFlatCorners(List<Vec2> ring, double by) {
    List<Vec2> kept = new ArrayList<>(ring);
    for (int i = 0; kept.size() > 3 && i < kept.size(); i++) {
      Vec2 before = kept.get((i + kept.size() - 1) % kept.size());
      Vec2 here = kept.get(i);
      Vec2 after = kept.get((i + 1) % kept.size());
      Vec2 chord = after.minus(before);
      double l = chord.length();
      if (l < 1e-9 || Math.abs(chord.cross(here.minus(before))) / l <= by && here.minus(before).dot(chord) > 0
          && after.minus(here).dot(chord) > 0 || isSpike(before.minus(here), after.minus(here), by)) {
        kept.remove(i);
        i = Math.max(-1, i - 2);
      }
    }
    return kept;
  }

  /** The edges to and from a corner run back on each other. */
  private static boolean isSpike(Vec2 back, Vec2 on, double width) {
    return back.dot(on) > 0 && Math.abs(back.cross(on)) <= width * Math.max(back.length(), on.length());
  }

  public boolean contains(Vec2 p) {
    return new IndexedPointInAreaLocator(geometry).locate(new Coordinate(p.u(), p.v())) == Location.INTERIOR;
  }

  /** True where the two have a point in common, an edge or corner included. */
  public boolean touches(Region o) {
    return !isEmpty() && !o.isEmpty() && geometry.intersects(o.geometry);
  }

  /** Shortest distance between the two, zero where they overlap. */
  public double distance(Region o) {
    return isEmpty() || o.isEmpty() ? Double.POSITIVE_INFINITY : geometry.distance(o.geometry);
  }

  /** Distance of {@code p} to the nearest ring; infinite for an empty region. */
  public double boundaryDistance(Vec2 p) {
    return isEmpty() ? Double.POSITIVE_INFINITY : geometry.getBoundary().distance(FACTORY.createPoint(new Coordinate(p.u(), p.v())));
  }

  public double distance(Vec2 p) {
    return geometry.distance(FACTORY.createPoint(new Coordinate(p.u(), p.v())));
  }

  /** A point well inside. */
  public Vec2 interiorPoint() {
    Coordinate c = geometry.getInteriorPoint().getCoordinate();
    return new Vec2(c.x, c.y);
  }

  public Vec2 centroid() {
    Coordinate c = geometry.getCentroid().getCoordinate();
    return new Vec2(c.x, c.y);
  }

  public double minU() {
    return geometry.getEnvelopeInternal().getMinX();
  }

  public double maxU() {
    return geometry.getEnvelopeInternal().getMaxX();
  }

  public double minV() {
    return geometry.getEnvelopeInternal().getMinY();
  }

  public double maxV() {
    return geometry.getEnvelopeInternal().getMaxY();
  }

  double centreU() {
    return (minU() + maxU()) / 2;
  }

  double centreV() {
    return (minV() + maxV()) / 2;
  }

  /** The same points of space, in the coordinates of another plane, moved along {@code direction} until they lie in it. */
  public Region projected(Plane from, Plane to, Vec3 direction) {
    double along = to.normal().dot(direction);
    List<List<Vec2>> rings = new ArrayList<>();
    for (Ring ring : rings()) {
      List<Vec2> points = new ArrayList<>();
      for (Vec2 p : ring.points()) {
        Vec3 q = from.at(p.u(), p.v());
        Vec3 r = q.minus(direction.times(to.height(q) / along));
        points.add(new Vec2(to.u(r), to.v(r)));
      }
      rings.add(points);
    }
    return evenOdd(rings);
  }

  private static Region of(Geometry g) {
    Geometry areas = areasOf(g);
    return areas.isEmpty() ? EMPTY : new Region(areas);
  }

  /** Areas alone: where two touch or collapse, an overlay yields lines and points, too. */
  private static Geometry areasOf(Geometry g) {
    if (g instanceof Polygon || g.isEmpty()) {
      return g;
    }
    List<Polygon> polygons = new ArrayList<>();
    for (int i = 0; i < g.getNumGeometries(); i++) {
      if (g.getGeometryN(i) instanceof Polygon p && !p.isEmpty()) {
        polygons.add(p);
      }
    }
    return polygons.size() == 1 ? polygons.get(0) : FACTORY.createMultiPolygon(polygons.toArray(Polygon[]::new));
  }

  private static Geometry overlay(Geometry a, Geometry b, int operation) {
    try {
      return areasOf(OverlayNG.overlay(a, b, operation, GRID));
    } catch (RuntimeException e) {
      // Snap-rounding on the fixed grid fails only on invalid input; the robust variant mends it.
      return areasOf(OverlayNGRobust.overlay(GeometryFixer.fix(a), GeometryFixer.fix(b), operation));
    }
  }

  @Override
  public String toString() {
    return geometry.toText();
  }
}
