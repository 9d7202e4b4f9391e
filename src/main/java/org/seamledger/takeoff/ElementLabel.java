package org.seamledger.takeoff;

import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.element.Building;
import org.seamledger.element.Element;

/**
 * What people need to find an element again.
 *
 * @param model index into the takeoff's models
 */
public record ElementLabel(String globalId, String ifcClass, String name, int model) {

  static SortedMap<String, ElementLabel> all(Building building) {
    SortedMap<String, ElementLabel> labels = new TreeMap<>();
    building.flashings().forEach(e -> labels.put(e.globalId(), of(e)));
    building.neighbours().forEach(e -> labels.put(e.globalId(), of(e)));
    building.roofs().forEach(e -> labels.put(e.globalId(), of(e)));
    return labels;
  }

  private static ElementLabel of(Element element) {
    return new ElementLabel(element.globalId(), element.ifcClass(), element.name(), element.model());
  }
}
