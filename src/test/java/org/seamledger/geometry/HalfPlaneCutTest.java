package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/** Cuts beside those of the overlay library (JTS OverlayNG on the same grid), and by the formulas of plane geometry. */
class HalfPlaneCutTest {

  private static final long SEED = 20;
  private static final GeometryFactory FACTORY = new GeometryFactory(Overlays.GRID);

  /** A comb of three teeth, 2 m wide each, joined by a back of 1 m: cut through the teeth, three rectangles are left. */
  @Test
  void aCombFallsApart() {
    Polygon comb = polygon(0, 0, 2, 0, 2, 4, 3, 4, 3, 0, 5, 0, 5, 4, 6, 4, 6, 0, 8, 0, 8, 5, 0, 5);
    Geometry teeth = HalfPlaneCut.left(comb, new Vec2(9, 3), new Vec2(-1, 3)).orElseThrow();
    assertThat(teeth.getNumGeometries()).isEqualTo(3);
    assertThat(teeth.getArea()).isCloseTo(3 * 2 * 3, within(1e-12));
    Geometry back = HalfPlaneCut.left(comb, new Vec2(-1, 3), new Vec2(9, 3)).orElseThrow();
    assertThat(back.getNumGeometries()).isEqualTo(1);
    assertThat(back.getArea()).isCloseTo(8 * 1 + 3 * 2 * 1, within(1e-12));
  }

  /** A square of 10 m with a hole of 2 m in each half; one cut opens the left hole, and the right one goes, or stays a hole. */
  @Test
  void holesAreOpenedKeptOrLost() {
    Polygon square = FACTORY.createPolygon(polygon(0, 0, 10, 0, 10, 10, 0, 10).getExteriorRing(),
        List.of(polygon(2, 4, 2, 6, 4, 6, 4, 4).getExteriorRing(), polygon(6, 4, 6, 6, 8, 6, 8, 4).getExteriorRing())
            .toArray(org.locationtech.jts.geom.LinearRing[]::new));
    Polygon left = (Polygon) HalfPlaneCut.left(square, new Vec2(3, -1), new Vec2(3, 11)).orElseThrow();
    assertThat(left.getNumInteriorRing()).isZero();
    assertThat(left.getArea()).isCloseTo(30 - 2, within(1e-12));
    Polygon right = (Polygon) HalfPlaneCut.left(square, new Vec2(3, 11), new Vec2(3, -1)).orElseThrow();
    assertThat(right.getNumInteriorRing()).isEqualTo(1);
    assertThat(right.getArea()).isCloseTo(70 - 2 - 4, within(1e-12));
  }

  /** Through the apex of a triangle both halves have it as a corner. */
  @Test
  void aCornerOnTheLineIsACornerOfBothSides() {
    Polygon triangle = polygon(0, 0, 10, 0, 5, 5);
    Geometry left = HalfPlaneCut.left(triangle, new Vec2(5, -1), new Vec2(5, 6)).orElseThrow();
    assertThat(left.norm().equalsExact(polygon(0, 0, 5, 0, 5, 5).norm())).isTrue();
  }

  @Test
  void whatAnOverlayWouldSnapIsLeftToIt() {
    Polygon nearly = polygon(0, 0, 10, 0, 5.0000002, 5);
    assertThat(HalfPlaneCut.left(nearly, new Vec2(5, -1), new Vec2(5, 6))).isEmpty();
    Polygon notch = polygon(0, 0, 5, 0, 5, 5, 10, 5, 10, 8, 0, 8);
    assertThat(HalfPlaneCut.left(notch, new Vec2(5, -1), new Vec2(5, 9))).as("an edge along the line").isEmpty();
  }

  @Test
  void sameCornersAsTheOverlay() {
    Random random = new Random(SEED);
    int compared = 0;
    for (int n = 0; n < 400; n++) {
      List<List<Vec2>> rings = new ArrayList<>();
      for (int r = 0; r < 1 + n % 3; r++) {
        rings.add(star(random, 3 + random.nextInt(9), 1 + r));
      }
      Geometry areas = rings.stream().map(Overlays::ringArea).reduce((a, b) -> Overlays.overlay(a, b, OverlayNG.SYMDIFFERENCE)).get();
      double at = Overlays.GRID.makePrecise(4 * random.nextDouble() - 2);
      Geometry cut = HalfPlaneCut.left(areas, new Vec2(at, -10), new Vec2(at, 10)).orElse(null);
      if (cut != null) {
        Geometry side = polygon(-10, -10, at, -10, at, 10, -10, 10);
        Geometry overlay = Overlays.overlay(areas, side, OverlayNG.INTERSECTION);
        assertThat(cut.isValid()).as("seed %d, case %d", SEED, n).isTrue();
        assertThat(cut.isEmpty()).as("seed %d, case %d", SEED, n).isEqualTo(overlay.isEmpty());
        if (!cut.isEmpty()) {
          assertThat(cut.norm().toText()).as("seed %d, case %d", SEED, n).isEqualTo(overlay.norm().toText());
          compared++;
        }
      }
    }
    assertThat(compared).isGreaterThan(200);
  }

  /** Corners round the origin at random distances: it never crosses itself. */
  private static List<Vec2> star(Random random, int corners, double scale) {
    List<Vec2> ring = new ArrayList<>();
    for (int i = 0; i < corners; i++) {
      double angle = 2 * Math.PI * (i + 0.8 * random.nextDouble()) / corners;
      double radius = scale * (0.3 + random.nextDouble());
      ring.add(new Vec2(radius * Math.cos(angle), radius * Math.sin(angle)));
    }
    return ring;
  }

  /** What half-spaces leave of a region, one cut after the other, is the region without the union of their sections. */
  @Test
  void halfSpacesTakeWhatTheirUnionTakes() {
    Random random = new Random(SEED);
    int[] sizes = new int[3];
    for (int round = 0; round < 400; round++) {
      Plane plane = Plane.through(point(random), new Vec3(random.nextGaussian(), random.nextGaussian(), 1).unit());
      Region window = Region.rectangle(-20, -20, 20, 20);
      Region kept = Region.rectangle(-9 * random.nextDouble(), -9, 9, 9 * random.nextDouble()).minus(Region.rectangle(-2, -8, 2, -5));
      List<Solid> tools = new ArrayList<>();
      for (int i = random.nextInt(5); i >= 0; i--) {
        tools.add(new HalfSpace(point(random),
            random.nextInt(4) == 0 ? plane.normal().times(random.nextBoolean() ? 1 : -1)
                : new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian())));
      }
      SectionSide side = SectionSide.values()[random.nextInt(2)];
      Solid.Union union = new Solid.Union(tools);
      Region cut = union.takenFrom(kept, plane, 1e-4, side, window);
      Region expected = kept.minus(union.section(plane, 1e-4, side, window));
      assertThat(cut.minus(expected).area() + expected.minus(cut).area()).as("round %d", round).isLessThan(1e-6 * kept.perimeter());
      sizes[cut.isEmpty() ? 0 : cut.area() < kept.area() ? 1 : 2]++;
    }
    assertThat(Arrays.stream(sizes).boxed().toList()).as("nothing, a part and all is left, each often").allMatch(n -> n > 10);
  }

  private static Vec3 point(Random random) {
    return new Vec3(3 * random.nextGaussian(), 3 * random.nextGaussian(), 3 * random.nextGaussian());
  }

  private static Polygon polygon(double... uv) {
    Coordinate[] ring = new Coordinate[uv.length / 2 + 1];
    for (int i = 0; i < ring.length; i++) {
      int at = 2 * i % uv.length;
      ring[i] = new Coordinate(uv[at], uv[at + 1]);
    }
    return FACTORY.createPolygon(ring);
  }
}
