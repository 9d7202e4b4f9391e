package org.seamledger.takeoff;

import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.element.Building;
import org.seamledger.element.Element;
import org.seamledger.element.NamedElement;
import org.seamledger.finding.Finding;

/**
 * What people need to find an element again.
 *
 * @param model index into the takeoff's models
 * @param storey name of the storey that it is in, or the empty string
 */
public record ElementLabel(String globalId, String ifcClass, String name, int model, String storey) {

  /** Of doors and rooms below the roof, only of those that a finding names. */
  static SortedMap<String, ElementLabel> all(Building building, List<Finding> findings) {
    SortedMap<String, ElementLabel> labels = new TreeMap<>();
    building.named().forEach(e -> labels.put(e.globalId(), of(e)));
    Set<String> spoken = findings.stream().flatMap(f -> f.elements().stream()).collect(Collectors.toSet());
    building.below().stream().map(Element::globalId).filter(id -> !spoken.contains(id)).forEach(labels::remove);
    return labels;
  }

  private static ElementLabel of(NamedElement element) {
    return new ElementLabel(element.globalId(), element.ifcClass(), element.name(), element.model(), element.storey());
  }
}
