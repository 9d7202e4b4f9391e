package org.seamledger.roof;

/** What an edge of a facet ends at: another facet, an obstacle, or nothing. */
public sealed interface Contact permits Contact.OtherFacet, Contact.Free, Obstacle {

  /** Where several contacts are possible, that with the least number wins; each kind has one of its own. */
  int precedence();

  /** Whether two stretches with these contacts end at the same thing. */
  boolean sameAs(Contact o);

  /**
   * Another facet, whose edge faces this one.
   *
   * @param facet index into {@link Roof#facets()}
   * @param gapM distance between the edges as modelled, metres
   */
  record OtherFacet(int facet, double gapM) implements Contact {
    @Override
    public int precedence() {
      return 0;
    }

    @Override
    public boolean sameAs(Contact o) {
      return o instanceof OtherFacet other && other.facet == facet;
    }

    OtherFacet shifted(int by) {
      return new OtherFacet(facet + by, gapM);
    }
  }

  /** Nothing: the surface ends in the open. */
  record Free() implements Contact {
    static final Free EDGE = new Free();

    @Override
    public int precedence() {
      return 5;
    }

    @Override
    public boolean sameAs(Contact o) {
      return o instanceof Free;
    }
  }
}
