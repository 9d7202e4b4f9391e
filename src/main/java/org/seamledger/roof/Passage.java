package org.seamledger.roof;

import org.seamledger.geometry.Region;

/**
 * How a thing goes through the roof as modelled.
 *
 * @param service whether it is a pipe, a duct or another part of the building's services
 * @param hole whether the roof has a hole for it
 */
public record Passage(boolean service, Hole hole) {

  /** For what is no thing through the roof. */
  public static final Passage NONE = new Passage(false, Hole.NOT_ASKED);

  /** A smaller part of the thing (share, square metres) in the roof's material is rounding of facets. */
  private static final double SHARE = 0.02;
  private static final double SPECK_AREA = 1e-4;

  /** Whether the roof's own shape, or an opening in it, leaves room for a thing. */
  public enum Hole {
    /** The thing goes through solid material. */
    NONE,
    /** There is a hole, but the thing does not stand in it whole. */
    PARTLY,
    /** The thing stands in a hole. */
    WHOLE,
    /** Not a thing through the roof. */
    NOT_ASKED;

    /** The word in facts: {@code none}, {@code partly}, {@code whole}. */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /**
   * @param footprint of the thing in the roof's plane
   * @param material the roof's material just below the plane
   * @param holes openings in it, and holes of its outline
   */
  static Passage of(boolean service, Region footprint, Region material, Region holes) {
    double solid = footprint.intersect(material).area();
    if (solid <= Math.max(SPECK_AREA, SHARE * footprint.area())) {
      return new Passage(service, Hole.WHOLE);
    }
    return new Passage(service, footprint.intersect(holes).area() > SPECK_AREA ? Hole.PARTLY : Hole.NONE);
  }
}
