package org.seamledger.roof;

import java.util.function.DoublePredicate;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Side;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;

/** How far, vertically, a body goes up above a place on a plane. */
final class Heights {

  /** Heights are looked for up to here, metres. */
  static final double HIGHEST = 3;
  private static final double FINE = 0.005;

  private Heights() {
  }

  /** Above a point of the plane; zero where the body does not stand over it. To the centimetre, {@link #HIGHEST} at most. */
  static double above(Solid solid, Plane plane, Vec2 point, Tolerance tolerance) {
    Region around = Region.rectangle(point.u() - 1, point.v() - 1, point.u() + 1, point.v() + 1);
    return greatest(0.01, h -> {
      Region lifted = section(solid, plane, h, tolerance, around.grown(2 * HIGHEST));
      return !lifted.isEmpty() && lifted.contains(point);
    });
  }

  /** The body's section with the plane lifted vertically by {@code h}, moved straight down into the plane's coordinates. */
  static Region section(Solid solid, Plane plane, double h, Tolerance tolerance, Region window) {
    // What stands straight above (u, v) has the lifted plane's coordinates (u, v + h · up-slope part of the vertical).
    return solid.section(plane.lifted(h), tolerance.coincidenceM(), Side.BELOW, window).moved(-h * plane.u().z(), -h * plane.v().z());
  }

  /** The greatest height, by halving, for which {@code reaches} holds, to the centimetre; zero where it fails at {@code needed}. */
  static double greatest(double needed, DoublePredicate reaches) {
    if (!reaches.test(needed)) {
      return 0;
    }
    if (reaches.test(HIGHEST)) {
      return HIGHEST;
    }
    double low = needed;
    double high = HIGHEST;
    while (high - low > FINE) {
      double mid = (low + high) / 2;
      if (reaches.test(mid)) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return Math.rint(low * 100) / 100;
  }
}
