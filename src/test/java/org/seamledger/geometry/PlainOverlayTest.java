package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/** What is told without an overlay, beside the overlay library (JTS OverlayNG on the same grid), corner for corner. */
class PlainOverlayTest {

  private static final long SEED = 47;
  private static final int[] OPERATIONS = {OverlayNG.INTERSECTION, OverlayNG.UNION, OverlayNG.DIFFERENCE, OverlayNG.SYMDIFFERENCE};
  private static final GeometryFactory FACTORY = new GeometryFactory(Overlays.GRID);

  @Test
  void sameOutlinesWhereverTheyBegin() {
    Random random = new Random(SEED);
    for (int n = 0; n < 1000; n++) {
      Polygon a = star(random, 0.5 + 4 * random.nextDouble());
      Polygon b = begunElsewhere(random, a);
      for (int operation : OPERATIONS) {
        assertSame(a, b, operation, n);
      }
    }
  }

  @Test
  void anAreaWellWithinAnother() {
    Random random = new Random(SEED);
    int told = 0;
    for (int n = 0; n < 1000; n++) {
      Polygon a = star(random, 1);
      double r = 0.5 + 2 * random.nextDouble();
      Polygon b = polygon(-r, -r, r, -r - 0.1, r + 0.2, r, -r, r);
      Polygon either = random.nextBoolean() ? b : b.reverse();
      Optional<Geometry> plain = PlainOverlay.of(a, either, OverlayNG.INTERSECTION);
      if (plain.isPresent()) {
        told++;
        assertSame(a, either, OverlayNG.INTERSECTION, n);
      }
      assertThat(PlainOverlay.of(a, either, OverlayNG.DIFFERENCE)).isEmpty();
    }
    assertThat(told).as("the quick way is taken, and not always").isBetween(400, 900);
  }

  @Test
  void anAreaWithinItselfGrown() {
    Random random = new Random(SEED);
    for (int n = 0; n < 300; n++) {
      Polygon a = star(random, 2);
      Region region = Region.of(a);
      Geometry overlay = OverlayNG.overlay(a, a.buffer(4e-5), OverlayNG.INTERSECTION, Overlays.GRID);
      assertThat(PlainOverlay.withinLarger(a).orElseThrow().equalsExact(overlay)).as("seed %d, case %d", SEED, n).isTrue();
      assertThat(region.intersectGrown(region, 4e-5)).hasToString(overlay.toText());
      assertThat(region.intersectGrown(Region.of(star(random, 1)), 0.1).area()).isLessThanOrEqualTo(region.area());
    }
  }

  /** A needle's sides lie within the grid of each other at its tip; a corner off the grid moves on to it; a touching side is no inside. */
  @Test
  void whatAnOverlayWouldMoveIsLeftToIt() {
    Polygon needle = polygon(0, 0, 10, 0, 10, 0.0000005);
    assertThat(PlainOverlay.of(needle, needle.copy(), OverlayNG.INTERSECTION)).isEmpty();
    Polygon off = polygon(0, 0, 1.00000004, 0, 1, 1);
    assertThat(PlainOverlay.of(off, off.copy(), OverlayNG.DIFFERENCE)).isEmpty();
    Polygon square = polygon(0, 0, 4, 0, 4, 4, 0, 4);
    assertThat(PlainOverlay.of(polygon(1, 0, 2, 0, 2, 1), square, OverlayNG.INTERSECTION)).isEmpty();
    assertThat(PlainOverlay.of(polygon(1, 0.0000001, 2, 0.5, 2, 1), square, OverlayNG.INTERSECTION)).isEmpty();
    Geometry frame = FACTORY.createPolygon(square.getExteriorRing(),
        List.of(polygon(1, 1, 3, 1, 3, 3).getExteriorRing()).toArray(org.locationtech.jts.geom.LinearRing[]::new));
    assertThat(PlainOverlay.of(frame, frame.copy(), OverlayNG.DIFFERENCE)).as("a hole").isEmpty();
    assertThat(PlainOverlay.of(FACTORY.createPolygon(), square, OverlayNG.UNION)).isEmpty();
  }

  private static void assertSame(Geometry a, Geometry b, int operation, int n) {
    Geometry overlay = OverlayNG.overlay(a, b, operation, Overlays.GRID);
    Geometry plain = PlainOverlay.of(a, b, operation).orElseThrow();
    assertThat(plain.equalsExact(overlay)).as("seed %d, case %d, operation %d: %s for %s", SEED, n, operation, plain, overlay).isTrue();
  }

  private static Polygon begunElsewhere(Random random, Polygon a) {
    Coordinate[] c = a.getExteriorRing().getCoordinates();
    int n = c.length - 1;
    int start = random.nextInt(n);
    int step = random.nextBoolean() ? 1 : n - 1;
    Coordinate[] turned = new Coordinate[n + 1];
    for (int i = 0; i <= n; i++) {
      turned[i] = c[(start + i * step) % n].copy();
    }
    return FACTORY.createPolygon(turned);
  }

  /** On the grid, counter-clockwise or clockwise. */
  static Polygon star(Random random, double size) {
    int n = 3 + random.nextInt(8);
    double[] corners = new double[2 * n];
    for (int i = 0; i < n; i++) {
      double r = size * (0.3 + random.nextDouble());
      corners[2 * i] = r * Math.cos(2 * Math.PI * i / n);
      corners[2 * i + 1] = r * Math.sin(2 * Math.PI * i / n);
    }
    Polygon star = (Polygon) Overlays.ringArea(Region.polygon(points(corners)).rings().get(0).points());
    return random.nextBoolean() ? star : star.reverse();
  }

  private static List<Vec2> points(double... uv) {
    return java.util.stream.IntStream.range(0, uv.length / 2).mapToObj(i -> new Vec2(uv[2 * i], uv[2 * i + 1])).toList();
  }

  private static Polygon polygon(double... uv) {
    Coordinate[] ring = new Coordinate[uv.length / 2 + 1];
    for (int i = 0; i < ring.length; i++) {
      ring[i] = new Coordinate(uv[2 * i % uv.length], uv[(2 * i + 1) % uv.length]);
    }
    return FACTORY.createPolygon(ring);
  }
}
