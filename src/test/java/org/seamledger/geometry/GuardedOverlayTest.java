package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;

class GuardedOverlayTest {

  /** What the library's cutting of ears throws where coordinates are beyond all numbers, such as 1.7976931348623157E308. */
  @Test
  void whatTheLibraryCantDoIsSaidOfTheGeometry() {
    assertThatThrownBy(() -> Overlays.guarded(() -> {
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
