package org.seamledger.junction;

import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.BoundaryEdge;
import org.seamledger.roof.Contact;
import org.seamledger.roof.Obstacle;
import org.seamledger.roof.Roof;

/**
 * Measures a stretch of a facet's outline. With g the facet's plan gradient (uphill, |g| = tan of the slope), d the line's plan direction
 * and p its plan normal into the facet: the facet rises across the line by atan(g·p), and the plan angle between the line and the fall is
 * acos(|g·d| / |g|).
 */
final class LineFacts {

  /** A gradient below this has no direction worth the name. */
  private static final double LEVEL = 1e-6;
  /** A shorter plan direction (metres) is none: the line is plumb. */
  private static final double PLUMB = 1e-12;
  private static final double RIGHT_ANGLE = 90;
  /** Gaps are given to a tenth of a millimetre, extents to a micrometre. */
  private static final double GAP_STEPS = 1e4;
  private static final double EXTENT_STEPS = 1e6;

  private final Roof roof;
  private final BoundaryEdge edge;
  private final Plane plane;

  LineFacts(Roof roof, BoundaryEdge edge) {
    this.roof = roof;
    this.edge = edge;
    this.plane = roof.facets().get(edge.facet()).plane();
  }

  Facts facts() {
    Contact c = edge.contact();
    Plane first = otherIsFirst() ? other() : plane;
    Facts.Builder f = Facts.builder()
        .number("inclinationDegrees", isRound(c) ? 0 : inclination())
        .number("slopeDegrees", first.slopeDegrees())
        .number("obliquityDegrees", obliquity(first));
    double rise = rise(plane, true);
    if (c instanceof Contact.OtherFacet facet) {
      faceFacts(f, rise, facet);
    } else {
      f.count("faceCount", 1).word("against", against(c))
          .number("lowRiseDegrees", rise).number("highRiseDegrees", rise).number("minSlopeDegrees", plane.slopeDegrees());
    }
    if (c instanceof Obstacle o) {
      obstacleFacts(f, o);
    } else if (c instanceof Contact.Free) {
      double o = obliquity(plane);
      double limit = roof.limits().lines().obliqueDegrees();
      f.flag("oblique", o > limit && o < RIGHT_ANGLE - limit);
    }
    if (isCurved()) {
      f.flag("curved", true);
    }
    return f.build();
  }

  private void obstacleFacts(Facts.Builder f, Obstacle o) {
    if (!o.ifcClass().isEmpty()) {
      f.word("neighbourClass", o.ifcClass());
    }
    if (!(o instanceof Obstacle.OpenHole)) {
      f.number("upstandM", o.heightM());
    }
    if (o instanceof Obstacle.Wall wall && wall.gapM() > 0) {
      f.number("gapM", Math.rint(wall.gapM() * GAP_STEPS) / GAP_STEPS);
    }
    if (o instanceof Obstacle.Penetration || o instanceof Obstacle.OpenHole) {
      extents(f, o);
    }
    if (o instanceof Obstacle.Penetration p) {
      f.word("roofHole", p.passage().hole().word()).flag("service", p.passage().service());
    }
  }

  static boolean isRound(Contact c) {
    return c instanceof Obstacle o && o.round();
  }

  /** The plane of the facet on the other side of the line. */
  private Plane other() {
    return roof.facets().get(((Contact.OtherFacet) edge.contact()).facet()).plane();
  }

  /** Facts name the faces in the order of their ids, whichever facet the line was found on. */
  private boolean otherIsFirst() {
    return edge.contact() instanceof Contact.OtherFacet other
        && roof.faceOfFacet().get(other.facet()) < roof.faceOfFacet().get(edge.facet());
  }

  private static String against(Contact c) {
    if (isRound(c)) {
      return "round";
    }
    return c instanceof Obstacle.Penetration ? "penetration"
        : c instanceof Obstacle.OpenHole ? "opening" : c instanceof Obstacle ? "wall" : "nothing";
  }

  private void faceFacts(Facts.Builder f, double rise, Contact.OtherFacet facet) {
    Plane other = other();
    double otherRise = rise(other, false);
    Vec3 n = plane.normal();
    double turn = Math.toDegrees(Math.atan2(n.cross(other.normal()).length(), n.dot(other.normal())));
    f.count("faceCount", 2).word("against", "face")
        .number("lowRiseDegrees", Math.min(rise, otherRise)).number("highRiseDegrees", Math.max(rise, otherRise))
        .number("otherSlopeDegrees", (otherIsFirst() ? plane : other).slopeDegrees())
        .number("otherObliquityDegrees", obliquity(otherIsFirst() ? plane : other))
        .number("minSlopeDegrees", Math.min(plane.slopeDegrees(), other.slopeDegrees()))
        .number("foldDegrees", rise + otherRise < 0 ? turn : -turn);
    if (facet.gapM() > roof.tolerance().coincidenceM()) {
      f.number("gapM", Math.rint(facet.gapM() * GAP_STEPS) / GAP_STEPS);
    }
  }

  private boolean isCurved() {
    return roof.face(edge.facet()).isCurved()
        || edge.contact() instanceof Contact.OtherFacet other && roof.face(other.facet()).isCurved();
  }

  private double inclination() {
    Vec3 d = edge.to().minus(edge.from());
    return Math.toDegrees(Math.atan2(Math.abs(d.z()), d.planLength()));
  }

  private static Vec2 gradient(Plane p) {
    return new Vec2(-p.normal().x() / p.normal().z(), -p.normal().y() / p.normal().z());
  }

  private Vec2 planDirection() {
    Vec3 d = edge.to().minus(edge.from());
    double l = d.planLength();
    return l < PLUMB ? new Vec2(1, 0) : new Vec2(d.x() / l, d.y() / l);
  }

  /** Rise across the line into a face to its left (or right), degrees. */
  private double rise(Plane p, boolean left) {
    Vec2 into = planDirection().left().times(left ? 1 : -1);
    return Math.toDegrees(Math.atan(gradient(p).dot(into)));
  }

  private double obliquity(Plane p) {
    Vec2 g = gradient(p);
    if (g.length() < LEVEL) {
      return RIGHT_ANGLE;
    }
    Vec2 d = planDirection();
    return Math.toDegrees(Math.atan2(Math.abs(g.cross(d)), Math.abs(g.dot(d))));
  }

  private void extents(Facts.Builder f, Obstacle o) {
    Region outline = o.footprint();
    if (outline.isEmpty()) {
      return;
    }
    // The frame's u runs across the slope and v up it, so extents in the frame are those that are wanted.
    f.number("widthAcrossFallM", micro(outline.maxU() - outline.minU()))
        .number("depthAlongFallM", micro((outline.maxV() - outline.minV()) * plane.normal().z()));
    if (o.round()) {
      f.number("diameterM", micro(Math.min(outline.maxU() - outline.minU(), (outline.maxV() - outline.minV()))));
    }
  }

  private static double micro(double m) {
    return Math.rint(m * EXTENT_STEPS) / EXTENT_STEPS;
  }
}
