package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Model;

/** What elements are made of, by the names of their materials. */
public final class Materials {

  /** Layer sets, lists and the like hold each other no deeper. */
  private static final int DEEPEST = 6;

  private final Model model;
  private final Set<String> names = new TreeSet<>();

  private Materials(Model model) {
    this.model = model.quiet();
  }

  /** Names by element, of all layers and parts, sorted, a semicolon and a blank apart; an element without one has no entry. */
  public static Map<Long, String> of(Model model, Set<Long> elements) {
    Map<Long, List<Long>> stated = new TreeMap<>();
    model.eachReferences("IFCRELASSOCIATESMATERIAL", (id, r) -> {
      for (int i = 0; i < r.size(); i++) {
        if (r.parameter(i) == 4 && elements.contains(r.target(i))) {
          stated.computeIfAbsent(r.target(i), k -> new ArrayList<>()).add(r.first(5));
        }
      }
    });
    Map<Long, String> all = new TreeMap<>();
    stated.forEach((element, materials) -> {
      Materials m = new Materials(model);
      materials.forEach(id -> m.collect(id, 0));
      if (!m.names.isEmpty()) {
        all.put(element, String.join("; ", m.names));
      }
    });
    return all;
  }

  /** A material's name, and those of whatever it is put together of. */
  private void collect(long id, int depth) {
    try {
      Entity e = model.get(id);
      switch (e.keyword()) {
        case "IFCMATERIAL" -> names.add(e.text(0));
        case "IFCMATERIALLIST", "IFCMATERIALLAYERSET" -> all(e, 0, depth);
        case "IFCMATERIALLAYERSETUSAGE", "IFCMATERIALLAYER", "IFCMATERIALLAYERWITHOFFSETS" -> one(e, 0, depth);
        case "IFCMATERIALCONSTITUENTSET", "IFCMATERIALPROFILESET" -> all(e, 2, depth);
        case "IFCMATERIALCONSTITUENT", "IFCMATERIALPROFILE", "IFCMATERIALPROFILEWITHOFFSETS" -> one(e, 2, depth);
        case "IFCMATERIALPROFILESETUSAGE" -> one(e, 0, depth);
        default -> {
        }
      }
    } catch (EntityProblem p) {
      // A material that can't be read says nothing of the metal.
    }
  }

  private void all(Entity e, int attribute, int depth) {
    if (depth < DEEPEST && e.has(attribute)) {
      e.references(attribute).forEach(id -> collect(id, depth + 1));
    }
  }

  private void one(Entity e, int attribute, int depth) {
    if (depth < DEEPEST && e.has(attribute)) {
      collect(e.optionalReference(attribute), depth + 1);
    }
  }
}
