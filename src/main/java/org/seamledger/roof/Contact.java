package org.seamledger.roof;

import org.seamledger.geometry.Region;

/**
 * What an edge of a facet ends at.
 *
 * @param kind what it is to the facet
 * @param otherFacet index of the facet on the other side for {@link Kind#FACE}, else -1
 * @param neighbour GlobalId of the wall, thing, opening or roof element, else the empty string
 * @param neighbourClass its IFC class, else the empty string
 * @param heightM how far it stands above the facet's plane, as far as measured
 * @param round whether it is a round thing
 * @param outline the whole thing's outline in the facet's plane; empty for faces and free edges
 * @param gapM distance between the edges that meet as modelled
 * @param passage how the thing goes through the roof; {@link Passage#NONE} where there is none
 */
public record Contact(Kind kind, int otherFacet, String neighbour, String neighbourClass, double heightM, boolean round,
    Region outline, double gapM, Passage passage) {

  /** The kinds of contact, the one that wins where several are possible first. */
  public enum Kind {
    FACE, PENETRATION, WALL, OPENING, ROOF_SIDE, FREE
  }

  static final Contact FREE = new Contact(Kind.FREE, -1, "", "", 0, false, Region.EMPTY, 0, Passage.NONE);

  static Contact face(int other, double gap) {
    return new Contact(Kind.FACE, other, "", "", 0, false, Region.EMPTY, gap, Passage.NONE);
  }

  static Contact of(Obstacle o) {
    return new Contact(Kind.valueOf(o.kind().name()), -1, o.globalId(), o.ifcClass(), o.heightM(), o.round(), o.footprint(), 0, o.passage());
  }

  /** Whether two stretches with these contacts are against the same thing. */
  public boolean sameAs(Contact o) {
    return kind == o.kind && otherFacet == o.otherFacet && neighbour.equals(o.neighbour);
  }
}
