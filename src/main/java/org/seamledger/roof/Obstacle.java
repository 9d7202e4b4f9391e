package org.seamledger.roof;

import org.seamledger.geometry.Region;

/**
 * Something that a roof face ends at: a wall, a thing through the roof, a hole, or the side of another roof element.
 *
 * @param kind what it is to the face
 * @param globalId of the element, or of the opening
 * @param ifcClass its IFC class; a hole has that of what fills it, or {@code IfcOpeningElement}
 * @param footprint where it stands in the face's plane
 * @param heightM how far it stands above the face's plane, vertically, as far as measured; zero for a hole
 * @param round whether the footprint's outline is a circle or an ellipse
 * @param passage how it goes through the roof, if it does
 */
record Obstacle(Kind kind, String globalId, String ifcClass, Region footprint, double heightM, boolean round, Passage passage) {

  enum Kind {
    WALL, PENETRATION, OPENING, ROOF_SIDE
  }

  Obstacle with(Passage other) {
    return new Obstacle(kind, globalId, ifcClass, footprint, heightM, round, other);
  }
}
