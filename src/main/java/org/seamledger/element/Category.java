package org.seamledger.element;

/** What an element is to a roof. */
public enum Category {
  /** Carries a part of the roof's surface. */
  ROOF,
  /** Walls, curtain walls, parapets: what a roof may end at. */
  WALL,
  /** Anything else that may stand in a roof: chimneys, columns, proxies, windows, hatches. */
  PENETRATION,
  /** A part of the building's services that may go through a roof: pipes, ducts, cable trays, their fittings and terminals. */
  SERVICE,
  /** Sheet metal that covers a junction: it says that somebody thought of it, and stands in nothing. */
  FLASHING,
  /** Takes the water of an eave; likewise. */
  GUTTER,
  /** A door of a wall below a roof. */
  DOOR,
  /** A room below a roof. */
  SPACE
}
