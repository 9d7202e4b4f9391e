package org.seamledger.junction;

import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.BoundaryEdge;
import org.seamledger.roof.Contact;
import org.seamledger.roof.Passage;
import org.seamledger.roof.Roof;

/**
 * Measures a stretch of a facet's outline. With g the facet's plan gradient (uphill, |g| = tan of the slope), d the line's plan direction
 * and p its plan normal into the facet: the facet rises across the line by atan(g·p), and the plan angle between the line and the fall is
 * acos(|g·d| / |g|).
 */
final class LineFacts {

  /** A gradient below this has no direction worth the name. */
  private static final double LEVEL = 1e-6;

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
    Plane first = otherIsFirst() ? roof.facets().get(c.otherFacet()).plane() : plane;
    Facts.Builder f = Facts.builder()
        .number("inclinationDegrees", c.round() ? 0 : inclination())
        .number("slopeDegrees", first.slopeDegrees())
        .number("obliquityDegrees", obliquity(first));
    double rise = rise(plane, true);
    if (c.kind() == Contact.Kind.FACE) {
      faceFacts(f, rise);
    } else {
      f.count("faceCount", 1).word("against", against(c))
          .number("lowRiseDegrees", rise).number("highRiseDegrees", rise).number("minSlopeDegrees", plane.slopeDegrees());
    }
    if (!c.neighbourClass().isEmpty()) {
      f.word("neighbourClass", c.neighbourClass());
    }
    if (c.kind() == Contact.Kind.WALL || c.kind() == Contact.Kind.PENETRATION || c.kind() == Contact.Kind.ROOF_SIDE) {
      f.number("upstandM", c.heightM());
    }
    if (c.kind() == Contact.Kind.PENETRATION || c.kind() == Contact.Kind.OPENING) {
      extents(f, c.outline());
    }
    if (c.passage().hole() != Passage.Hole.NOT_ASKED) {
      f.word("roofHole", c.passage().hole().word()).flag("service", c.passage().service());
    }
    if (c.kind() == Contact.Kind.FREE) {
      double o = obliquity(plane);
      f.flag("oblique", o > 5 && o < 85);
    }
    if (isCurved()) {
      f.flag("curved", true);
    }
    return f.build();
  }

  /** Facts name the faces in the order of their ids, whichever facet the line was found on. */
  private boolean otherIsFirst() {
    return edge.contact().kind() == Contact.Kind.FACE
        && roof.faceOfFacet().get(edge.contact().otherFacet()) < roof.faceOfFacet().get(edge.facet());
  }

  static String against(Contact c) {
    return switch (c.kind()) {
      case FACE -> "face";
      case WALL, ROOF_SIDE -> "wall";
      case PENETRATION -> c.round() ? "round" : "penetration";
      case OPENING -> c.round() ? "round" : "opening";
      case FREE -> "nothing";
    };
  }

  private void faceFacts(Facts.Builder f, double rise) {
    Plane other = roof.facets().get(edge.contact().otherFacet()).plane();
    double otherRise = rise(other, false);
    Vec3 n = plane.normal();
    double turn = Math.toDegrees(Math.atan2(n.cross(other.normal()).length(), n.dot(other.normal())));
    f.count("faceCount", 2).word("against", "face")
        .number("lowRiseDegrees", Math.min(rise, otherRise)).number("highRiseDegrees", Math.max(rise, otherRise))
        .number("otherSlopeDegrees", (otherIsFirst() ? plane : other).slopeDegrees())
        .number("otherObliquityDegrees", obliquity(otherIsFirst() ? plane : other))
        .number("minSlopeDegrees", Math.min(plane.slopeDegrees(), other.slopeDegrees()))
        .number("foldDegrees", rise + otherRise < 0 ? turn : -turn);
    if (edge.contact().gapM() > roof.tolerance().coincidenceM()) {
      f.number("gapM", Math.rint(edge.contact().gapM() * 1e4) / 1e4);
    }
  }

  private boolean isCurved() {
    return roof.face(edge.facet()).isCurved()
        || edge.contact().kind() == Contact.Kind.FACE && roof.face(edge.contact().otherFacet()).isCurved();
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
    return l < 1e-12 ? new Vec2(1, 0) : new Vec2(d.x() / l, d.y() / l);
  }

  /** Rise across the line into a face to its left (or right), degrees. */
  private double rise(Plane p, boolean left) {
    Vec2 into = planDirection().left().times(left ? 1 : -1);
    return Math.toDegrees(Math.atan(gradient(p).dot(into)));
  }

  private double obliquity(Plane p) {
    Vec2 g = gradient(p);
    if (g.length() < LEVEL) {
      return 90;
    }
    Vec2 d = planDirection();
    return Math.toDegrees(Math.atan2(Math.abs(g.cross(d)), Math.abs(g.dot(d))));
  }

  private void extents(Facts.Builder f, Region outline) {
    if (outline.isEmpty()) {
      return;
    }
    // The frame's u runs across the fall and v up the slope, so extents in the frame are what is asked for.
    f.number("widthAcrossFallM", micro(outline.maxU() - outline.minU()))
        .number("depthAlongFallM", micro((outline.maxV() - outline.minV()) * plane.normal().z()));
    if (edge.contact().round()) {
      f.number("diameterM", micro(Math.min(outline.maxU() - outline.minU(), (outline.maxV() - outline.minV()))));
    }
  }

  private static double micro(double m) {
    return Math.rint(m * 1e6) / 1e6;
  }
}
