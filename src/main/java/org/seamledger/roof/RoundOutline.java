package org.seamledger.roof;

import java.util.List;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;

/**
 * Tells circles and ellipses from other outlines.
 *
 * <p>An ellipse with semi-axes a, b has second moments a²/4, b²/4 about its axes; scaled by them, every point of its outline is two
 * units from the centre. An outline of enough corners for which that nearly holds is round.
 */
final class RoundOutline {

  private final List<Vec2> corners;
  private final Vec2 centre;
  private double uu;
  private double uv;
  private double vv;

  private RoundOutline(List<Vec2> corners, Vec2 centre) {
    this.corners = corners;
    this.centre = centre;
    moments();
  }

  /** Whether the outline of the region's first part is a circle or an ellipse; holes don't count. */
  static boolean isRound(Region region, SurfaceLimits.Penetrating limits) {
    return new RoundOutline(region.rings().get(0).points(), region.filled().centroid()).isRound(limits);
  }

  /** Second moments of the polygon about its centroid, per area, by Green's theorem. */
  private void moments() {
    double area = 0;
    for (int i = 0; i < corners.size(); i++) {
      Vec2 p = corners.get(i).minus(centre);
      Vec2 q = corners.get((i + 1) % corners.size()).minus(centre);
      double cross = p.cross(q);
      area += cross / 2;
      uu += cross * (p.u() * p.u() + p.u() * q.u() + q.u() * q.u()) / 12;
      vv += cross * (p.v() * p.v() + p.v() * q.v() + q.v() * q.v()) / 12;
      uv += cross * (2 * p.u() * p.v() + p.u() * q.v() + q.u() * p.v() + 2 * q.u() * q.v()) / 24;
    }
    uu /= area;
    vv /= area;
    uv /= area;
  }

  private boolean isRound(SurfaceLimits.Penetrating limits) {
    double det = uu * vv - uv * uv;
    if (corners.size() < limits.roundCorners() || !(det > 0)) {
      return false;
    }
    for (Vec2 c : corners) {
      Vec2 p = c.minus(centre);
      double radius = Math.sqrt((vv * p.u() * p.u() - 2 * uv * p.u() * p.v() + uu * p.v() * p.v()) / det);
      if (Math.abs(radius / 2 - 1) > limits.roundDeviation()) {
        return false;
      }
    }
    return true;
  }
}
