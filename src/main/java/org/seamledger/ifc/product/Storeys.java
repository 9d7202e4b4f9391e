package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.Model;

/** Which storey elements are in: by IfcRelContainedInSpatialStructure of the element, or of the nearest whole that has one. */
public final class Storeys {

  private static final String STOREY = "IFCBUILDINGSTOREY";

  private final Model model;
  private final Relations relations;
  private final Map<Long, Long> structures = new HashMap<>();

  private Storeys(Scope scope) {
    this.model = scope.model();
    this.relations = scope.relations();
  }

  /** Names of the storeys of these elements, by instance; no entry where an element is in none, or in one without a name. */
  public static Map<Long, String> of(Scope scope, Set<Long> elements) {
    Storeys storeys = new Storeys(scope);
    storeys.skim(elements);
    Map<Long, String> names = new HashMap<>();
    for (long id : elements) {
      String name = storeys.name(id);
      if (!name.isBlank()) {
        names.put(id, name);
      }
    }
    return names;
  }

  /** The relations name every product of a model; only what is asked for is kept. */
  private void skim(Set<Long> elements) {
    Set<Long> wanted = new HashSet<>(elements);
    elements.forEach(id -> wanted.addAll(relations.ancestors(id)));
    elements.forEach(id -> wanted.add(relations.hostOfFilling(id)));
    model.eachReferences("IFCRELCONTAINEDINSPATIALSTRUCTURE", (id, r) -> {
      long structure = r.first(5);
      for (int i = 0; structure >= 0 && i < r.size(); i++) {
        if (r.parameter(i) == 4 && wanted.contains(r.target(i))) {
          structures.putIfAbsent(r.target(i), structure);
        }
      }
    });
  }

  private String name(long element) {
    List<Long> up = new ArrayList<>(List.of(element));
    up.addAll(relations.ancestors(element));
    up.add(relations.hostOfFilling(element));
    return up.stream().filter(structures::containsKey).findFirst().map(id -> storey(structures.get(id))).orElse("");
  }

  /** A space is a part of its storey. */
  private String storey(long structure) {
    List<Long> up = new ArrayList<>(List.of(structure));
    up.addAll(relations.ancestors(structure));
    for (long id : up) {
      if (model.keywordOf(id).equals(STOREY)) {
        Entity storey = model.get(id);
        return storey.text(2).isBlank() && storey.has(7) ? storey.text(7) : storey.text(2);
      }
    }
    return "";
  }
}
