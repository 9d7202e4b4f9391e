package org.seamledger.takeoff;

import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.element.Building;
import org.seamledger.element.NamedElement;

/**
 * What people need to find an element again.
 *
 * @param model index into the takeoff's models
 * @param storey name of the storey that it is in, or the empty string
 */
public record ElementLabel(String globalId, String ifcClass, String name, int model, String storey) {

  static SortedMap<String, ElementLabel> all(Building building) {
    SortedMap<String, ElementLabel> labels = new TreeMap<>();
    building.named().forEach(e -> labels.put(e.globalId(), of(e)));
    return labels;
  }

  private static ElementLabel of(NamedElement element) {
    return new ElementLabel(element.globalId(), element.ifcClass(), element.name(), element.model(), element.storey());
  }
}
