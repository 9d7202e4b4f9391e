package org.seamledger.roof;

import java.util.Locale;
import org.seamledger.geometry.Region;

/**
 * How a penetration goes through the roof as modelled.
 *
 * @param service whether it is a pipe, a duct or another part of the building's services
 * @param hole whether the roof has a hole for it
 */
public record Passage(boolean service, Hole hole) {

  /** Whether the roof's own shape, or an opening in it, leaves room for a penetration. */
  public enum Hole {
    /** It goes through solid material. */
    NONE,
    /** There is a hole, but it does not stand in it whole. */
    PARTLY,
    /** It stands in a hole. */
    WHOLE,
    /** Not looked for yet. */
    UNKNOWN;

    /** The word in facts: {@code none}, {@code partly}, {@code whole}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * @param footprint of the penetration in the roof's plane
   * @param material the roof's material just below the plane
   * @param holes openings in it, and holes of its outline
   */
  static Passage of(boolean service, Region footprint, Region material, Region holes, SurfaceLimits.Penetrating limits) {
    double solid = footprint.intersect(material).area();
    if (solid <= Math.max(limits.solidM2(), limits.solidShare() * footprint.area())) {
      return new Passage(service, Hole.WHOLE);
    }
    return new Passage(service, footprint.sharesMoreThan(limits.solidM2(), holes) ? Hole.PARTLY : Hole.NONE);
  }
}
