package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * A flat outline to be swept into a body: one outside, counter-clockwise, and holes in it, clockwise. No ring crosses itself or
 * another; first points are not repeated.
 */
public record PolygonOutline(List<Vec2> outer, List<List<Vec2>> holes) {

  /** Points closer than this (metres) are one. */
  private static final double SAME = 1e-7;
  /** A line that touches itself, or crosses itself by less than this share of its area, is mended; a worse one is refused. */
  private static final double MENDED = 1e-3;

  private static final GeometryFactory FACTORY = new GeometryFactory();

  public PolygonOutline {
    outer = List.copyOf(outer);
    holes = holes.stream().map(List::copyOf).toList();
  }

  /**
   * Outlines of the area inside {@code outer} and outside {@code holes}: usually one, more where it touches itself.
   *
   * @throws IllegalArgumentException if the outside crosses itself or goes round no area
   */
  public static List<PolygonOutline> of(List<Vec2> outer, List<List<Vec2>> holes) {
    if (holes.isEmpty()) {
      List<Vec2> convex = convex(outer);
      if (convex != null) {
        return List.of(new PolygonOutline(convex, holes));
      }
    }
    LinearRing shell = ring(outer);
    if (shell == null) {
      throw new IllegalArgumentException("the outline goes round no area");
    }
    List<LinearRing> inner = new ArrayList<>();
    for (List<Vec2> hole : holes) {
      LinearRing h = ring(hole);
      if (h != null) {
        inner.add(h);
      }
    }
    Polygon polygon = FACTORY.createPolygon(shell, inner.toArray(LinearRing[]::new));
    return polygon.isValid() ? List.of(outline(polygon)) : mended(shell, inner);
  }

  /** The ring, counter-clockwise, if it is plainly convex, or null: most outlines are, and need no closer look. */
  private static List<Vec2> convex(List<Vec2> ring) {
    int n = ring.size() > 1 && ring.get(0).distance(ring.get(ring.size() - 1)) <= SAME ? ring.size() - 1 : ring.size();
    double turned = 0;
    double side = 0;
    for (int i = 0; i < n; i++) {
      Vec2 in = ring.get(i).minus(ring.get((i + n - 1) % n));
      Vec2 out = ring.get((i + 1) % n).minus(ring.get(i));
      double sine = in.cross(out);
      if (Math.abs(sine) <= 1e-6 * in.length() * out.length() || sine * side < 0 || out.length() <= SAME) {
        return null;
      }
      side = sine;
      turned += Math.atan2(sine, in.dot(out));
    }
    if (n < 3 || Math.abs(turned) > 3 * Math.PI) {
      return null;
    }
    List<Vec2> points = new ArrayList<>(ring.subList(0, n));
    if (side < 0) {
      Collections.reverse(points);
    }
    return points;
  }

  /** False where a hole touches the outside or another hole in a corner of both. */
  boolean hasDistinctCorners() {
    if (holes.isEmpty()) {
      return true;
    }
    Set<Vec2> corners = new HashSet<>(outer);
    int count = outer.size();
    for (List<Vec2> hole : holes) {
      corners.addAll(hole);
      count += hole.size();
    }
    return corners.size() == count;
  }

  private static List<PolygonOutline> mended(LinearRing shell, List<LinearRing> inner) {
    Geometry area = fixed(shell);
    double stated = Math.abs(signedArea(shell.getCoordinates()));
    if (Math.abs(area.getArea() - stated) > MENDED * Math.max(stated, area.getArea())) {
      throw new IllegalArgumentException("the outline crosses itself");
    }
    for (LinearRing hole : inner) {
      Geometry whole = area;
      area = Overlays.guarded(() -> whole.difference(fixed(hole)));
    }
    List<PolygonOutline> parts = new ArrayList<>();
    for (int i = 0; i < area.getNumGeometries(); i++) {
      if (area.getGeometryN(i) instanceof Polygon p && p.getArea() > SAME) {
        parts.add(outline(p));
      }
    }
    if (parts.isEmpty()) {
      throw new IllegalArgumentException("the outline goes round no area");
    }
    return parts;
  }

  private static Geometry fixed(LinearRing ring) {
    return Overlays.fixed(FACTORY.createPolygon(ring));
  }

  private static LinearRing ring(List<Vec2> points) {
    List<Coordinate> c = new ArrayList<>(points.size() + 1);
    for (Vec2 p : points) {
      Coordinate next = new Coordinate(p.u(), p.v());
      if (c.isEmpty() || c.get(c.size() - 1).distance(next) > SAME) {
        c.add(next);
      }
    }
    while (c.size() > 1 && c.get(0).distance(c.get(c.size() - 1)) <= SAME) {
      c.remove(c.size() - 1);
    }
    if (c.size() < 3) {
      return null;
    }
    c.add(new Coordinate(c.get(0)));
    Coordinate[] closed = c.toArray(Coordinate[]::new);
    return Math.abs(signedArea(closed)) > SAME * SAME ? FACTORY.createLinearRing(closed) : crossing(closed);
  }

  /** A figure of eight has no signed area, but is no line either. */
  private static LinearRing crossing(Coordinate[] closed) {
    LinearRing ring = FACTORY.createLinearRing(closed);
    return fixed(ring).getArea() > SAME ? ring : null;
  }

  private static PolygonOutline outline(Polygon p) {
    List<List<Vec2>> holes = new ArrayList<>();
    for (int i = 0; i < p.getNumInteriorRing(); i++) {
      holes.add(points(p.getInteriorRingN(i), false));
    }
    return new PolygonOutline(points(p.getExteriorRing(), true), holes);
  }

  private static List<Vec2> points(LinearRing ring, boolean counterClockwise) {
    Coordinate[] c = ring.getCoordinates();
    List<Vec2> points = new ArrayList<>(c.length - 1);
    for (int i = 0; i + 1 < c.length; i++) {
      points.add(new Vec2(c[i].x, c[i].y));
    }
    if (signedArea(c) > 0 != counterClockwise) {
      Collections.reverse(points);
    }
    return points;
  }

  private static double signedArea(Coordinate[] c) {
    double twice = 0;
    for (int i = 0; i + 1 < c.length; i++) {
      twice += (c[i].x - c[0].x) * (c[i + 1].y - c[0].y) - (c[i + 1].x - c[0].x) * (c[i].y - c[0].y);
    }
    return twice / 2;
  }

  /** Outside and holes, the outside first. */
  public List<List<Vec2>> rings() {
    List<List<Vec2>> rings = new ArrayList<>();
    rings.add(outer);
    rings.addAll(holes);
    return rings;
  }
}
