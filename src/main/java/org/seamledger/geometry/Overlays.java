package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.util.AssertionFailedException;

/** Overlays of areas on one grid of 0.1 micrometres, far below what a model is exact to and far above rounding of its coordinates. */
final class Overlays {

  static final PrecisionModel GRID = new PrecisionModel(1e7);
  static final GeometryFactory FACTORY = new GeometryFactory(GRID);

  private Overlays() {
  }

  /** Joined two by two, so that an outline with many rings is not overlaid anew for each of them. */
  static Geometry combined(List<Geometry> areas, int operation) {
    if (areas.size() == 1) {
      return areas.get(0);
    }
    int half = areas.size() / 2;
    return overlay(combined(areas.subList(0, half), operation), combined(areas.subList(half, areas.size()), operation), operation);
  }

  /** The area that a line goes round by the even-odd rule, on the grid; empty for fewer than three different points. */
  static Geometry ringArea(List<Vec2> ring) {
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
    Coordinate[] closed = coordinates.toArray(Coordinate[]::new);
    Polygon polygon = FACTORY.createPolygon(closed);
    return ConvexRing.isOne(closed) || polygon.isValid() ? polygon : fixed(polygon);
  }

  /** Outsides, each followed by its holes, as one area; none where they are not that, or one is no simple ring. */
  static Optional<Geometry> nested(List<List<Geometry>> parts) {
    List<Polygon> polygons = new ArrayList<>();
    for (List<Geometry> part : parts) {
      LinearRing[] rings = new LinearRing[part.size()];
      for (int i = 0; i < rings.length; i++) {
        if (!(part.get(i) instanceof Polygon p) || p.isEmpty() || p.getNumInteriorRing() > 0) {
          return Optional.empty();
        }
        rings[i] = p.getExteriorRing();
      }
      polygons.add(FACTORY.createPolygon(rings[0], Arrays.copyOfRange(rings, 1, rings.length)));
    }
    Geometry all = polygons.size() == 1 ? polygons.get(0) : FACTORY.createMultiPolygon(polygons.toArray(Polygon[]::new));
    return polygons.size() == 1 && parts.get(0).size() == 1 || all.isValid() ? Optional.of(all) : Optional.empty();
  }

  /** Areas alone: where two touch or collapse, an overlay yields lines and points, too. */
  static Geometry areasOf(Geometry g) {
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

  /** A robust overlay of two areas on the grid; the operation is one of {@link OverlayNG}. */
  static Geometry overlay(Geometry a, Geometry b, int operation) {
    Interrupts.check();
    Optional<Geometry> plain = PlainOverlay.of(a, b, operation);
    if (plain.isPresent()) {
      return plain.get();
    }
    try {
      return areasOf(OverlayNG.overlay(a, b, operation, GRID));
    } catch (RuntimeException e) {
      // Snap-rounding on the fixed grid fails only on invalid input; the robust variant mends it.
      return guarded(() -> areasOf(OverlayNGRobust.overlay(GeometryFixer.fix(a), GeometryFixer.fix(b), operation)));
    }
  }

  /** The area of an outline that crosses itself. */
  static Geometry fixed(Polygon polygon) {
    Tangles.refuse(polygon.getExteriorRing().getCoordinates());
    return guarded(() -> GeometryFixer.fix(polygon));
  }

  /** What the library can't do with absurd coordinates is said of the geometry, not of the library. */
  static <T> T guarded(Supplier<T> work) {
    try {
      return work.get();
    } catch (CancellationException e) {
      throw e;
    } catch (TopologyException | IllegalArgumentException | IllegalStateException | AssertionFailedException e) {
      throw e instanceof DegenerateGeometryException known ? known
          : new DegenerateGeometryException("areas are too large or too tangled to compute with", e);
    }
  }
}
