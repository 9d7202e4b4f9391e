package org.seamledger.ids.check;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import org.seamledger.ids.check.ModelRelations.Link;
import org.seamledger.step.Instance;

/** The names and categories of an element's materials, with those of layers, profiles and constituents. */
final class MaterialNames {

  private static final String[] NAMES = {"Name", "LayerSetName", "Category"};
  private static final String[] PARTS = {"ForLayerSet", "ForProfileSet", "ForProfileEndSet", "MaterialLayers", "MaterialProfiles",
      "MaterialConstituents", "Materials", "Material"};

  private MaterialNames() {
  }

  /** Empty where the element has no material: neither itself nor by its type. */
  static Optional<Set<String>> of(Subject subject) {
    long[] own = subject.model().relations().of(Link.MATERIAL, subject.id());
    if (own.length == 0 && subject.model().isA(subject.instance(), "IFCOBJECT")) {
      own = subject.type().map(t -> subject.model().relations().of(Link.MATERIAL, t.id())).orElse(own);
    }
    if (own.length == 0) {
      return Optional.empty();
    }
    Deque<Instance> open = new ArrayDeque<>();
    for (long id : own) {
      subject.model().find(id).ifPresent(open::add);
    }
    return open.isEmpty() ? Optional.empty() : Optional.of(names(open, subject.model()));
  }

  private static Set<String> names(Deque<Instance> open, ModelAccess model) {
    Set<String> names = new LinkedHashSet<>();
    Set<Long> seen = new HashSet<>();
    while (!open.isEmpty()) {
      Instance at = open.poll();
      if (seen.add(at.id())) {
        for (String attribute : NAMES) {
          names.add(model.text(at, attribute));
        }
        for (String attribute : PARTS) {
          open.addAll(model.targets(at, attribute));
        }
      }
    }
    names.remove("");
    return names;
  }
}
