package org.seamledger.element;

import java.util.List;
import org.seamledger.geometry.Solid;

/**
 * A hole in an element.
 *
 * @param globalId of the opening
 * @param body what the hole takes away, in the building's coordinates
 * @param filling GlobalId of what fills the hole, or the empty string
 * @param fillingClass IFC class of what fills the hole, such as {@code IfcWindow}, or the empty string
 */
public record Opening(String globalId, List<Solid> body, String filling, String fillingClass) {
  public Opening {
    body = List.copyOf(body);
  }

  public boolean isFilled() {
    return !filling.isEmpty();
  }
}
