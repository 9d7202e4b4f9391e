package org.seamledger.ids.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.seamledger.ids.check.ModelRelations.Link;
import org.seamledger.step.Instance;

/**
 * A classification that an element has: the system, and the codes of the reference and of those above it.
 *
 * @param system empty where none is stated
 */
record ClassificationEntry(String system, List<String> codes) {

  ClassificationEntry {
    codes = List.copyOf(codes);
  }

  /** Of an element: its own, and those of its type in systems that it has none of itself. */
  static List<ClassificationEntry> of(Subject subject) {
    List<ClassificationEntry> all = own(subject.model(), subject.id());
    Optional<Instance> type = subject.model().isA(subject.instance(), "IFCOBJECT") ? subject.type() : Optional.empty();
    if (type.isPresent()) {
      Set<String> systems = new HashSet<>();
      all.forEach(e -> systems.add(e.system()));
      own(subject.model(), type.get().id()).stream().filter(e -> !systems.contains(e.system())).forEach(all::add);
    }
    return all;
  }

  private static List<ClassificationEntry> own(ModelAccess model, long id) {
    List<ClassificationEntry> entries = new ArrayList<>();
    for (long target : model.relations().of(Link.CLASSIFICATION, id)) {
      model.find(target).ifPresent(t -> entries.add(entry(model, t)));
    }
    return entries;
  }

  /** Up the references to the system. */
  private static ClassificationEntry entry(ModelAccess model, Instance first) {
    List<String> codes = new ArrayList<>();
    Set<Long> seen = new HashSet<>();
    Instance at = first;
    while (at != null && seen.add(at.id())) {
      if (at.keyword().equals("IFCCLASSIFICATION")) {
        return new ClassificationEntry(model.text(at, "Name"), codes);
      }
      // The name of the attribute in IFC4, and in IFC2X3.
      for (String attribute : new String[] {"Identification", "ItemReference"}) {
        String code = model.text(at, attribute);
        if (!code.isEmpty()) {
          codes.add(code);
        }
      }
      at = model.target(at, "ReferencedSource").orElse(null);
    }
    return new ClassificationEntry("", codes);
  }
}
