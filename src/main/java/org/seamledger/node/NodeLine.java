package org.seamledger.node;

import org.seamledger.junction.LineEnd;

/** A line that leads away from a node, and what it is to it. */
public record NodeLine(LineEnd end, LineSort sort) {

  /** Whether a fact counts this end. */
  public boolean countsAs(String fact) {
    return sort.fact(end.height()).equals(fact) || fact.equals("endCount") || fact.equals("wallEnds") && sort.isWall()
        || fact.equals("curbEnds") && sort.isCurb();
  }
}
