package org.seamledger.roof;

import java.util.function.DoublePredicate;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;

/** How far, vertically and in metres, a body goes up above a place on a plane. */
final class Heights {

  /** Half the side of the window round a point (metres); a shift by the slope is added to it. */
  private static final double AROUND = 1;
  private static final double CM_PER_M = 100;

  private final SurfaceLimits.Obstacles limits;
  private final Tolerance tolerance;

  Heights(Tolerance tolerance, SurfaceLimits.Obstacles limits) {
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /** Above a point of the plane; zero where the body does not stand over it. To the centimetre, the limit at most. */
  double above(Solid solid, Plane plane, Vec2 point) {
    Region around = Region.rectangle(point.u() - AROUND, point.v() - AROUND, point.u() + AROUND, point.v() + AROUND);
    return greatest(limits.leastHeightM(), h -> {
      Region lifted = section(solid, plane, h, around.grown(2 * limits.highestM()));
      return !lifted.isEmpty() && lifted.contains(point);
    });
  }

  /** The body's section with the plane lifted vertically by {@code h}, moved straight down into the plane's coordinates. */
  Region section(Solid solid, Plane plane, double h, Region window) {
    // What stands straight above (u, v) has the lifted plane's coordinates (u, v + h · up-slope part of the vertical).
    return solid.section(plane.lifted(h), tolerance.coincidenceM(), SectionSide.BELOW, window).moved(-h * plane.u().z(),
        -h * plane.v().z());
  }

  /** The greatest height, by halving, for which {@code reaches} holds, to the centimetre; zero where it fails at {@code needed}. */
  double greatest(double needed, DoublePredicate reaches) {
    if (!reaches.test(needed)) {
      return 0;
    }
    if (reaches.test(limits.highestM())) {
      return limits.highestM();
    }
    double low = needed;
    double high = limits.highestM();
    while (high - low > limits.heightStepM()) {
      double mid = (low + high) / 2;
      if (reaches.test(mid)) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return Math.rint(low * CM_PER_M) / CM_PER_M;
  }
}
