package org.seamledger.drainage;

import java.util.List;
import org.seamledger.geometry.Vec3;

/**
 * A part of a face whose water all goes to one place.
 *
 * @param outline counter-clockwise seen from above, in the building's local coordinates, metres; two corners may be one
 * @param to the next place; the face itself where it stays
 */
public record Catchment(String face, List<Vec3> outline, WaterPlace to) {

  public Catchment {
    outline = List.copyOf(outline);
  }
}
