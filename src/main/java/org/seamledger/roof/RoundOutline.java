package org.seamledger.roof;

import java.util.List;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;

/**
 * Tells circles and ellipses from other outlines.
 *
 * <p>An ellipse with semi-axes a, b has second moments a²/4, b²/4 about its axes; scaled by them, every point of its outline is two
 * units from the centre. An outline of ten corners or more for which that holds within 3 % is round: a regular ten-sided polygon is
 * the coarsest circle that models draw.
 */
final class RoundOutline {

  private static final int MIN_CORNERS = 10;
  private static final double MAX_DEVIATION = 0.03;

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

  static RoundOutline of(Region region) {
    return new RoundOutline(region.rings().get(0).points(), region.filled().centroid());
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

  boolean isRound() {
    double det = uu * vv - uv * uv;
    if (corners.size() < MIN_CORNERS || !(det > 0)) {
      return false;
    }
    for (Vec2 c : corners) {
      Vec2 p = c.minus(centre);
      double radius = Math.sqrt((vv * p.u() * p.u() - 2 * uv * p.u() * p.v() + uu * p.v() * p.v()) / det);
      if (Math.abs(radius / 2 - 1) > MAX_DEVIATION) {
        return false;
      }
    }
    return true;
  }
}
