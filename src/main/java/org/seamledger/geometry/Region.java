package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/**
 * A part of a plane in the plane's own coordinates, metres: any number of polygons with holes, immutable.
 *
 * <p>Overlays are robust: they round to a grid of 0.1 micrometres, and never fail on touching or coinciding edges.
 */
public final class Region {

  public static final Region EMPTY = new Region(Overlays.FACTORY.createPolygon());

  /** What is nearer, metres, leaves corners in an outline that it is taken from: ten steps of the grid. */
  private static final double BESIDE = 1e-6;
  /** Corners of a convex area up to which cutting along each of its edges is quick. */
  private static final int FEW = 40;

  private final Geometry geometry;
  /** Found when first asked for. */
  private List<Ring> rings;
  private double area = Double.NaN;

  private Region(Geometry geometry) {
    this.geometry = geometry;
  }

  /** A closed line of a region's outline: counter-clockwise round an outside, clockwise round a hole, first point not repeated. */
  public record Ring(List<Vec2> points, boolean hole) {
    public Ring {
      points = List.copyOf(points);
    }
  }

  /** A rectangle with its sides along the plane's axes, metres; empty where it has no width or height. */
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
      Geometry one = Overlays.ringArea(ring);
      if (!one.isEmpty()) {
        areas.add(one);
      }
    }
    return areas.isEmpty() ? EMPTY : of(Overlays.combined(areas, OverlayNG.SYMDIFFERENCE));
  }

  /** What lies within {@code by} metres of a line, its ends cut off square. */
  public static Region alongLine(List<Vec2> line, double by) {
    Coordinate[] c = line.stream().map(p -> new Coordinate(p.u(), p.v())).toArray(Coordinate[]::new);
    BufferParameters square = new BufferParameters(1, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 4);
    return c.length < 2 ? EMPTY : of(Overlays.guarded(() -> BufferOp.bufferOp(Overlays.FACTORY.createLineString(c), by, square)));
  }

  /** Everything in any of the regions. */
  public static Region unionOf(Collection<Region> regions) {
    List<Region> some = regions.stream().filter(r -> !r.isEmpty()).toList();
    return some.isEmpty() ? EMPTY
        : some.size() == 1 ? some.get(0)
        : of(Overlays.combined(some.stream().map(r -> r.geometry).toList(), OverlayNG.UNION));
  }

  /** True where there is no area. */
  public boolean isEmpty() {
    return geometry.isEmpty();
  }

  /** Area, square metres, holes taken away. */
  public double area() {
    double known = area;
    if (Double.isNaN(known)) {
      known = geometry.getArea();
      area = known;
    }
    return known;
  }

  /** Length of all rings, holes included, metres. */
  public double perimeter() {
    return geometry.getLength();
  }

  /** Everything in either. */
  public Region union(Region o) {
    return isEmpty() ? o : o.isEmpty() ? this : of(Overlays.overlay(geometry, o.geometry, OverlayNG.UNION));
  }

  /** What is here and not in the other. */
  public Region minus(Region o) {
    return isEmpty() || o.isEmpty() || isApart(o, BESIDE) ? this : of(Overlays.overlay(geometry, o.geometry, OverlayNG.DIFFERENCE));
  }

  /** What both have in common. */
  public Region intersect(Region o) {
    return isEmpty() || o.isEmpty() || isApart(o, 0) ? EMPTY : of(Overlays.overlay(geometry, o.geometry, OverlayNG.INTERSECTION));
  }

  /** What both have in common where the other is grown by metres; quickly told of an area and its own. */
  public Region intersectGrown(Region o, double by) {
    Optional<Geometry> own = o == this && by > BESIDE ? PlainOverlay.withinLarger(geometry) : Optional.empty();
    return own.map(Region::of).orElseGet(() -> intersect(o.grown(by)));
  }

  /**
   * Whether the two have more than this in common, square metres: the same as of the area of {@link #intersect}, but found without it
   * where that can't be in doubt.
   */
  public boolean sharesMoreThan(double areaM2, Region o) {
    double common = roughlyShared(o);
    return Math.abs(common - areaM2) > roughness(o) ? common > areaM2 : intersect(o).area() > areaM2;
  }

  /** True only where they have more in common beyond doubt, which is much quicker to tell where one of them is convex. */
  public boolean surelySharesMoreThan(double areaM2, Region o) {
    return roughlyShared(o) - areaM2 > roughness(o);
  }

  /** More than the grid changes of a common area, square metres. */
  private double roughness(Region o) {
    return BESIDE * (1 + perimeter() + o.perimeter());
  }

  /** Area of what both have in common, square metres, without the grid; NaN where neither is convex. */
  private double roughlyShared(Region o) {
    Coordinate[] other = o.convex();
    if (other != null) {
      return roughlyWithin(other);
    }
    Coordinate[] own = convex();
    return own == null ? Double.NaN : o.roughlyWithin(own);
  }

  /** The only ring where it is convex and has few corners, else null. */
  private Coordinate[] convex() {
    if (!(geometry instanceof Polygon p) || p.getNumInteriorRing() > 0 || p.getNumPoints() > FEW) {
      return null;
    }
    Coordinate[] ring = p.getExteriorRing().getCoordinates();
    return ConvexRing.isOne(ring) ? ring : null;
  }

  private double roughlyWithin(Coordinate[] convex) {
    double sum = 0;
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      Polygon polygon = (Polygon) geometry.getGeometryN(i);
      if (!polygon.isEmpty()) {
        sum += ConvexRing.commonArea(polygon.getExteriorRing().getCoordinates(), convex);
        for (int k = 0; k < polygon.getNumInteriorRing(); k++) {
          sum -= ConvexRing.commonArea(polygon.getInteriorRingN(k).getCoordinates(), convex);
        }
      }
    }
    return sum;
  }

  private boolean isApart(Region o, double metres) {
    return !geometry.getEnvelopeInternal().intersects(o.geometry.getEnvelopeInternal())
        || Separation.isBetween(geometry, o.geometry, metres);
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
    List<Vec2> edge = new ArrayList<>();
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
        edge.add(fp < 0 ? 0 : edge.size(), p.towards(q, fp / (fp - fq)));
      }
    }
    if (edge.isEmpty()) {
      return kept.isEmpty() ? EMPTY : this;
    }
    return HalfPlaneCut.left(geometry, edge.get(0), edge.get(1)).map(Region::of).orElseGet(() -> intersect(polygon(kept)));
  }

  /**
   * The strips between each two bounds: the first where {@code u < bounds[1]}, the last where {@code u > bounds[n − 2]}. The area is halved
   * again and again, so that the many holes of a long face are not cut anew for every strip.
   *
   * @param bounds ascending, at least two
   */
  public List<Region> strips(List<Double> bounds) {
    return Strips.of(geometry, bounds).orElseGet(() -> {
      List<Region> strips = new ArrayList<>();
      split(bounds, 0, bounds.size() - 1, strips);
      return strips;
    });
  }

  private void split(List<Double> bounds, int from, int to, List<Region> strips) {
    if (to - from > 1) {
      int middle = (from + to) / 2;
      cut(1, 0, bounds.get(middle)).split(bounds, from, middle, strips);
      cut(-1, 0, -bounds.get(middle)).split(bounds, middle, to, strips);
    } else if (to > from) {
      strips.add(this);
    }
  }

  /** Moved by (du, dv), metres. */
  public Region moved(double du, double dv) {
    return isEmpty() ? this
        : of(AffineTransformation.translationInstance(du, dv).transform(geometry));
  }

  /** Grown by {@code by} metres all round with sharp corners; shrunk where {@code by} is negative. */
  public Region grown(double by) {
    if (isEmpty() || by == 0) {
      return this;
    }
    BufferParameters sharp = new BufferParameters(1, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 4);
    Interrupts.check();
    return of(Overlays.guarded(() -> BufferOp.bufferOp(geometry, by, sharp)));
  }

  /** The connected parts, each with its holes, ordered by their lowest, then leftmost corner. */
  public List<Region> parts() {
    List<Region> parts = new ArrayList<>();
    if (geometry instanceof Polygon) {
      if (!isEmpty()) {
        parts.add(this);
      }
      return parts;
    }
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
    List<Ring> known = rings;
    if (known == null) {
      known = List.copyOf(found());
      rings = known;
    }
    return known;
  }

  private List<Ring> found() {
    List<Ring> found = new ArrayList<>();
    for (Region part : parts()) {
      Polygon p = (Polygon) part.geometry.norm();
      found.add(ring(p.getExteriorRing(), false));
      for (int i = 0; i < p.getNumInteriorRing(); i++) {
        found.add(ring(p.getInteriorRingN(i), true));
      }
    }
    return found;
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
      Collections.reverse(points);
    }
    return new Ring(points, hole);
  }

  /** Without its holes. */
  public Region filled() {
    Region sum = EMPTY;
    for (Region part : parts()) {
      sum = sum.union(new Region(Overlays.FACTORY.createPolygon(((Polygon) part.geometry).getExteriorRing().getCoordinates())));
    }
    return sum;
  }

  /** True where no circle of this diameter (metres) fits in. */
  public boolean isNarrowerThan(double width) {
    return isEmpty() || !isSurelyWider(width) && Overlays.guarded(() -> geometry.buffer(-width / 2)).isEmpty();
  }

  /**
   * All within {@code width} metres of the outline lies beside an edge, or round one of the corners, and so has no larger area than these
   * strips and discs. Where the whole is larger there is a point in it that lies farther inside than it would have to by twice.
   */
  private boolean isSurelyWider(double width) {
    return area() > width * (perimeter() + geometry.getNumPoints() * Math.PI * width);
  }

  /**
   * Without corners that lie within {@code by} metres of the line between their neighbours, and without spikes no wider than that; every
   * other corner stays where it is, to the bit.
   */
  public Region simplified(double by) {
    return with(points -> FlatCorners.without(points, by));
  }

  /** Whether a point (metres) lies inside; on the outline it does not. */
  public boolean contains(Vec2 p) {
    return SimplePointInAreaLocator.locate(new Coordinate(p.u(), p.v()), geometry) == Location.INTERIOR;
  }

  /** Whether all within a radius of a point (metres) lies inside. */
  public boolean holdsDisc(Vec2 centre, double radius) {
    return !isEmpty() && boundaryDistance(centre) >= radius && contains(centre);
  }

  /** True where the two have a point in common, an edge or corner included. */
  public boolean touches(Region o) {
    return !isEmpty() && !o.isEmpty() && geometry.intersects(o.geometry);
  }

  /** Shortest distance between the two, metres, zero where they overlap; infinite where one is empty. */
  public double distance(Region o) {
    return isEmpty() || o.isEmpty() ? Double.POSITIVE_INFINITY : geometry.distance(o.geometry);
  }

  /** Distance of {@code p} to the nearest ring, metres; infinite for an empty region. */
  public double boundaryDistance(Vec2 p) {
    double least = Double.POSITIVE_INFINITY;
    for (Ring ring : rings()) {
      Vec2 before = ring.points().get(ring.points().size() - 1);
      for (Vec2 corner : ring.points()) {
        least = Math.min(least, Segment.distance(p, before, corner));
        before = corner;
      }
    }
    return least;
  }

  /** Shortest distance of a point to the region, metres, zero inside; zero for an empty region, as JTS has it. */
  public double distance(Vec2 p) {
    Coordinate c = new Coordinate(p.u(), p.v());
    if (isEmpty() || SimplePointInAreaLocator.locate(c, geometry) != Location.EXTERIOR) {
      return 0;
    }
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < geometry.getNumGeometries(); i++) {
      Polygon polygon = (Polygon) geometry.getGeometryN(i);
      least = Math.min(least, distance(c, polygon.getExteriorRing()));
      for (int k = 0; k < polygon.getNumInteriorRing(); k++) {
        least = Math.min(least, distance(c, polygon.getInteriorRingN(k)));
      }
    }
    return least;
  }

  private static double distance(Coordinate c, LinearRing ring) {
    Coordinate[] corners = ring.getCoordinates();
    double least = Double.POSITIVE_INFINITY;
    for (int i = 1; i < corners.length; i++) {
      least = Math.min(least, Distance.pointToSegment(c, corners[i - 1], corners[i]));
    }
    return least;
  }

  /** A point well inside, metres; the region must not be empty. */
  public Vec2 interiorPoint() {
    Coordinate c = geometry.getInteriorPoint().getCoordinate();
    return new Vec2(c.x, c.y);
  }

  /** Centre of gravity, metres; may lie outside. The region must not be empty. */
  public Vec2 centroid() {
    Coordinate c = geometry.getCentroid().getCoordinate();
    return new Vec2(c.x, c.y);
  }

  /** Least u, metres. */
  public double minU() {
    return geometry.getEnvelopeInternal().getMinX();
  }

  /** Greatest u, metres. */
  public double maxU() {
    return geometry.getEnvelopeInternal().getMaxX();
  }

  /** Least v, metres. */
  public double minV() {
    return geometry.getEnvelopeInternal().getMinY();
  }

  /** Greatest v, metres. */
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
    return with(points -> points.stream().map(p -> {
      Vec3 q = from.at(p.u(), p.v());
      Vec3 r = q.minus(direction.times(to.height(q) / along));
      return new Vec2(to.u(r), to.v(r));
    }).toList());
  }

  /** What every ring changed goes round: outsides with their holes as long as they are still that, else by the even-odd rule. */
  private Region with(UnaryOperator<List<Vec2>> change) {
    List<List<Vec2>> changed = new ArrayList<>();
    List<List<Geometry>> parts = new ArrayList<>();
    for (Ring ring : rings()) {
      List<Vec2> points = change.apply(ring.points());
      changed.add(points);
      if (!ring.hole()) {
        parts.add(new ArrayList<>());
      }
      parts.get(parts.size() - 1).add(Overlays.ringArea(points));
    }
    return Overlays.nested(parts).map(Region::of).orElseGet(() -> evenOdd(changed));
  }

  static Region of(Geometry g) {
    Geometry areas = Overlays.areasOf(g);
    return areas.isEmpty() ? EMPTY : new Region(areas);
  }

  @Override
  public String toString() {
    return geometry.toText();
  }
}
