package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.triangulate.polygon.PolygonTriangulator;

class GuardedOverlayTest {

  /** The library cuts ears off a polygon until it finds none; then it throws what no caller expects. */
  @Test
  void aPolygonThatReachesBeyondAllNumbersIsSaidToBeOne() {
    List<Coordinate> ring = List.of(new Coordinate(0, 0), new Coordinate(11, Double.MAX_VALUE), new Coordinate(11, -Double.MAX_VALUE),
        new Coordinate(0, -1), new Coordinate(0, 0));
    assertThatThrownBy(() -> Overlays.guarded(() -> {
      PolygonTriangulator.triangulate(Overlays.FACTORY.createPolygon(ring.toArray(Coordinate[]::new)));
      throw new IllegalStateException("Unable to find a convex corner");
    })).isInstanceOf(DegenerateGeometryException.class);
  }

  @Test
  void aCancelledOverlayStaysCancelled() {
    assertThatThrownBy(() -> Overlays.guarded(() -> {
      throw new CancellationException();
    })).isInstanceOf(CancellationException.class);
  }
}
