package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/** What is told of convex areas, and of areas by bounds, beside the library's general ways (JTS hulls, overlays, buffers, distances). */
class ConvexRingTest {

  private static final long SEED = 53;
  private static final GeometryFactory FACTORY = new GeometryFactory(Overlays.GRID);

  @Test
  void convexAreTheRingsWithTheCornersOfTheirHull() {
    Random random = new Random(SEED);
    int convex = 0;
    for (int n = 0; n < 2000; n++) {
      Polygon star = PlainOverlayTest.star(random, 1 + n % 5);
      boolean isHull = star.convexHull().getNumPoints() == star.getNumPoints();
      assertThat(ConvexRing.isOne(star.getExteriorRing().getCoordinates())).as("seed %d, case %d", SEED, n).isEqualTo(isHull);
      convex += isHull ? 1 : 0;
    }
    assertThat(convex).isBetween(200, 1800);
  }

  /** A star of five points turns left at each of them and goes round twice; the corner in the middle of a side turns nowhere. */
  @Test
  void goingRoundTwiceIsNotConvex() {
    List<Coordinate> ring = new ArrayList<>();
    for (int i = 0; i <= 5; i++) {
      double turn = 2 * Math.PI * (2 * i % 5) / 5;
      ring.add(new Coordinate(Math.cos(turn), Math.sin(turn)));
    }
    assertThat(ConvexRing.isOne(ring.toArray(Coordinate[]::new))).isFalse();
    assertThat(ConvexRing.isOne(corners(0, 0, 1, 0, 2, 0, 2, 2))).isFalse();
    assertThat(ConvexRing.isOne(corners(0, 0, 1, 0))).isFalse();
    assertThat(ConvexRing.isOne(corners(0, 0, 2, 0, 2, 2))).isTrue();
  }

  @Test
  void commonAreasAsTheOverlayHasThem() {
    Random random = new Random(SEED);
    for (int n = 0; n < 1000; n++) {
      Polygon star = PlainOverlayTest.star(random, 2);
      Polygon box = (Polygon) PlainOverlayTest.star(random, 2).convexHull();
      double common = OverlayNG.overlay(star, box, OverlayNG.INTERSECTION, Overlays.GRID).getArea();
      assertThat(ConvexRing.commonArea(star.getExteriorRing().getCoordinates(), box.getExteriorRing().getCoordinates()))
          .as("seed %d, case %d", SEED, n).isCloseTo(common, within(1e-5));
      Region a = Region.of(star);
      Region b = Region.of(box);
      for (double limit : new double[] {0, common / 2, common, Math.nextDown(common), common * 1.1}) {
        assertThat(a.sharesMoreThan(limit, b)).as("case %d, %s", n, limit).isEqualTo(a.intersect(b).area() > limit);
      }
    }
  }

  /** Areas with holes and in several parts, with a convex one and with another that is none. */
  @Test
  void whetherMoreIsSharedAsTheOverlayHasIt() {
    Random random = new Random(SEED);
    int sure = 0;
    for (int n = 0; n < 500; n++) {
      Region a = Region.of(OverlayNG.overlay(PlainOverlayTest.star(random, 3), PlainOverlayTest.star(random, 2), OverlayNG.SYMDIFFERENCE,
          Overlays.GRID));
      Polygon star = PlainOverlayTest.star(random, 2);
      Region b = Region.of(n % 3 == 0 ? star : star.convexHull());
      double common = a.intersect(b).area();
      for (double limit : new double[] {0, common / 2, common, common * 1.1}) {
        assertThat(a.sharesMoreThan(limit, b)).as("seed %d, case %d, %s", SEED, n, limit).isEqualTo(common > limit);
        assertThat(b.sharesMoreThan(limit, a)).as("seed %d, case %d, %s", SEED, n, limit).isEqualTo(b.intersect(a).area() > limit);
        if (a.surelySharesMoreThan(limit, b)) {
          sure++;
          assertThat(common).as("seed %d, case %d", SEED, n).isGreaterThan(limit);
        }
      }
    }
    assertThat(sure).as("the quick way is taken").isGreaterThan(500);
    assertThat(Region.EMPTY.sharesMoreThan(0, Region.rectangle(0, 0, 1, 1))).isFalse();
    assertThat(Region.rectangle(0, 0, 1, 1).surelySharesMoreThan(0, Region.EMPTY)).isFalse();
  }

  @Test
  void widthsAndDistancesAsTheLibraryHasThem() {
    Random random = new Random(SEED);
    for (int n = 0; n < 500; n++) {
      Geometry areas = OverlayNG.overlay(PlainOverlayTest.star(random, 3), PlainOverlayTest.star(random, 2), n % 2 == 0
          ? OverlayNG.SYMDIFFERENCE
          : OverlayNG.DIFFERENCE, Overlays.GRID);
      Region region = Region.of(areas);
      for (double width = 1e-4; width < 4; width *= 1.7) {
        assertThat(region.isNarrowerThan(width)).as("seed %d, case %d, width %s", SEED, n, width)
            .isEqualTo(areas.buffer(-width / 2).isEmpty());
      }
      Point p = FACTORY.createPoint(new Coordinate(4 * random.nextDouble() - 2, 4 * random.nextDouble() - 2));
      assertThat(region.distance(new Vec2(p.getX(), p.getY()))).as("seed %d, case %d", SEED, n).isEqualTo(areas.distance(p));
    }
    assertThat(Region.EMPTY.distance(new Vec2(1, 2))).isZero();
  }

  /** Few things are gone through, many found by a tree; the answers are those of looking at each. */
  @Test
  void fewAndManyThingsAreFoundByTheirBoxes() {
    Random random = new Random(SEED);
    for (int n = 0; n < 200; n++) {
      List<Box3> boxes = new ArrayList<>();
      for (int i = 0; i < n % 30; i++) {
        boxes.add(box(random));
      }
      Box3 near = box(random);
      PlanIndex<Box3> index = new PlanIndex<>(boxes, b -> b);
      assertThat(index.overlapping(near)).isEqualTo(boxes.stream().filter(near::overlaps).toList());
      assertThat(index.overlappingInPlan(near)).isEqualTo(boxes.stream()
          .filter(b -> b.overlaps(new Box3(near.minX(), near.minY(), -9, near.maxX(), near.maxY(), 9))).toList());
    }
  }

  private static Box3 box(Random random) {
    return Box3.of(List.of(point(random), point(random)));
  }

  private static Vec3 point(Random random) {
    return new Vec3(random.nextInt(9), random.nextInt(9), random.nextInt(9));
  }

  private static Coordinate[] corners(double... uv) {
    Coordinate[] ring = new Coordinate[uv.length / 2 + 1];
    for (int i = 0; i < ring.length; i++) {
      ring[i] = new Coordinate(uv[2 * i % uv.length], uv[(2 * i + 1) % uv.length]);
    }
    return ring;
  }
}
