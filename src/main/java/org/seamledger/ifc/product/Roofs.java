package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.Model;
import org.seamledger.step.References;

/** Which elements of a model carry the roof's surface. */
public final class Roofs {

  private final Scope scope;
  private final Model model;

  private Roofs(Scope scope) {
    this.scope = scope;
    this.model = scope.model();
  }

  /**
   * Ids of the elements that are roofs by class or type, and of their parts: IfcRoof, roof slabs, roofing coverings (typed by themselves
   * or by their type), and slabs, plates, coverings, proxies and layers inside one of these.
   */
  public static TreeSet<Long> typed(Scope scope) {
    return new Roofs(scope).typed();
  }

  /** Ids of slabs, plates, coverings and proxies whose name, or whose type's name, says roof. */
  public static TreeSet<Long> named(Scope scope) {
    return new Roofs(scope).named();
  }

  private TreeSet<Long> typed() {
    Set<Long> types = roofTypes();
    Set<Long> ofType = new TreeSet<>();
    if (!types.isEmpty()) {
      model.eachReferences("IFCRELDEFINESBYTYPE", (id, r) -> {
        if (types.contains(r.first(5))) {
          each(r, 4, ofType::add);
        }
      });
    }
    TreeSet<Long> roofs = new TreeSet<>();
    for (ElementClass c : ElementClass.all()) {
      if (c.role() == ElementClass.Role.ROOF || c.role() == ElementClass.Role.SLAB || c.role() == ElementClass.Role.COVERING) {
        for (long id : model.idsOf(c.keyword())) {
          if (c.role() == ElementClass.Role.ROOF || isRoof(predefinedType(model, id), ofType.contains(id))) {
            addWithParts(id, roofs);
          }
        }
      }
    }
    return roofs;
  }

  /** The element's own type counts, where it says something; its type object's does otherwise. */
  private static boolean isRoof(String own, boolean typeSaysRoof) {
    return switch (own) {
      case "ROOF", "ROOFING" -> true;
      case "", "NOTDEFINED", "USERDEFINED" -> typeSaysRoof;
      // A type object overrides the occurrence where both are given (IFC4, IfcSlab, PredefinedType).
      default -> typeSaysRoof;
    };
  }

  private Set<Long> roofTypes() {
    Set<Long> types = new TreeSet<>();
    for (long id : model.idsOf("IFCSLABTYPE")) {
      if (model.get(id).word(9).equals("ROOF")) {
        types.add(id);
      }
    }
    for (long id : model.idsOf("IFCCOVERINGTYPE")) {
      if (model.get(id).word(9).equals("ROOFING")) {
        types.add(id);
      }
    }
    return types;
  }

  static String predefinedType(Model model, long id) {
    Entity e = model.get(id);
    return model.schema().hasPredefinedType(e.keyword()) ? e.word(8) : "";
  }

  private void addWithParts(long id, Set<Long> roofs) {
    List<Long> open = new ArrayList<>(List.of(id));
    while (!open.isEmpty()) {
      long here = open.remove(open.size() - 1);
      ElementClass c = scope.classOf(here);
      if (c == null) {
        continue;
      }
      boolean added = switch (c.role()) {
        case ROOF, SLAB, COVERING, PLATE, PROXY, PART -> scope.flashings().category(c, here).isEmpty() && roofs.add(here);
        default -> false;
      };
      if (added || c.role() == ElementClass.Role.ASSEMBLY && here != id) {
        open.addAll(scope.relations().parts(here));
      }
    }
  }

  private TreeSet<Long> named() {
    Map<Long, Boolean> types = new HashMap<>();
    Set<Long> ofType = new TreeSet<>();
    model.eachReferences("IFCRELDEFINESBYTYPE", (id, r) -> {
      if (types.computeIfAbsent(r.first(5), this::typeSaysRoof)) {
        each(r, 4, ofType::add);
      }
    });
    TreeSet<Long> roofs = new TreeSet<>();
    for (ElementClass c : ElementClass.all()) {
      switch (c.role()) {
        case SLAB, COVERING, PLATE, PROXY -> {
          for (long id : model.idsOf(c.keyword())) {
            Entity e = model.get(id);
            if (ofType.contains(id) || RoofWords.sayRoof(e.text(2)) || RoofWords.sayRoof(e.text(4))) {
              addWithParts(id, roofs);
            }
          }
        }
        default -> {
          // Walls, pipes and the like are no roof, whatever their name.
        }
      }
    }
    return roofs;
  }

  private boolean typeSaysRoof(long id) {
    return switch (model.keywordOf(id)) {
      case "IFCSLABTYPE", "IFCCOVERINGTYPE", "IFCPLATETYPE", "IFCBUILDINGELEMENTPROXYTYPE" -> RoofWords.sayRoof(model.get(id).text(2));
      default -> false;
    };
  }

  private static void each(References r, int parameter, java.util.function.LongConsumer consumer) {
    for (int i = 0; i < r.size(); i++) {
      if (r.parameter(i) == parameter) {
        consumer.accept(r.target(i));
      }
    }
  }
}
