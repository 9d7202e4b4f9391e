package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/** What is told without an overlay, beside the overlay library (JTS OverlayNG on the same grid) and its distances. */
class SeparationTest {

  private static final long SEED = 31;
  private static final GeometryFactory FACTORY = new GeometryFactory(Overlays.GRID);

  @Test
  void areasWithAnEdgeBetweenThemHaveNothingInCommon() {
    Random random = new Random(SEED);
    int apart = 0;
    int common = 0;
    for (int n = 0; n < 2000; n++) {
      Geometry a = star(random, 0);
      Geometry b = star(random, 4 * random.nextDouble());
      double both = Overlays.overlay(a, b, OverlayNG.INTERSECTION).getArea();
      if (Separation.isBetween(a, b, 0)) {
        apart++;
        assertThat(both).as("seed %d, case %d", SEED, n).isZero();
      }
      if (Separation.isBetween(a, b, 0.1)) {
        assertThat(a.distance(b)).as("seed %d, case %d", SEED, n).isGreaterThanOrEqualTo(0.1);
      }
      common += both > 0 ? 1 : 0;
    }
    assertThat(apart).as("the quick way is taken").isGreaterThan(400);
    assertThat(common).as("and there is what it must not be taken for").isGreaterThan(400);
  }

  @Test
  void touchingAreasAreApartAndNotByAMillimetre() {
    Geometry a = Overlays.ringArea(List.of(new Vec2(0, 0), new Vec2(1, 0), new Vec2(1, 1), new Vec2(0, 1)));
    Geometry b = Overlays.ringArea(List.of(new Vec2(1, 0.2), new Vec2(2, 0.2), new Vec2(2, 3), new Vec2(1, 3)));
    assertThat(Separation.isBetween(a, b, 0)).isTrue();
    assertThat(Separation.isBetween(a, b, 0.001)).isFalse();
    assertThat(Separation.isBetween(a, a, 0)).isFalse();
  }

  /** One area beside the two of another, and between them. */
  @Test
  void everyPartHasToBeOnTheOtherSide() {
    Geometry left = FACTORY.toGeometry(new Envelope(-4, -3, 0, 1));
    Geometry right = FACTORY.toGeometry(new Envelope(3, 4, 0, 1));
    Geometry both = Overlays.overlay(left, right, OverlayNG.UNION);
    Geometry middle = FACTORY.toGeometry(new Envelope(-3.5, 3.5, 0.2, 0.8));
    Geometry above = FACTORY.toGeometry(new Envelope(-4, 4, 1.5, 2));
    assertThat(Separation.isBetween(both, middle, 0)).isFalse();
    assertThat(Separation.isBetween(both, above, 0)).isTrue();
  }

  @Test
  void discsAreHeldUpToTheOutline() {
    Region frame = Region.rectangle(0, 0, 4, 4).minus(Region.rectangle(1, 1, 3, 3));
    assertThat(frame.holdsDisc(new Vec2(0.5, 2), 0.5)).isTrue();
    assertThat(frame.holdsDisc(new Vec2(0.5, 2), 0.501)).isFalse();
    assertThat(frame.holdsDisc(new Vec2(2, 2), 0.1)).as("in the hole").isFalse();
    assertThat(frame.boundaryDistance(new Vec2(6, 5))).isCloseTo(Math.sqrt(5), within(1e-12));
    assertThat(Region.EMPTY.boundaryDistance(new Vec2(0, 0))).isInfinite();
  }

  private static Geometry star(Random random, double at) {
    List<Vec2> ring = new ArrayList<>();
    int n = 3 + random.nextInt(7);
    for (int i = 0; i < n; i++) {
      double r = 0.3 + random.nextDouble();
      ring.add(new Vec2(at + r * Math.cos(2 * Math.PI * i / n), r * Math.sin(2 * Math.PI * i / n)));
    }
    return Overlays.ringArea(ring);
  }
}
