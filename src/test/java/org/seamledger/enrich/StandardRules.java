package org.seamledger.enrich;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamledger.enrich.StandardSets.Item;
import org.seamledger.enrich.StandardSets.StandardSet;
import org.seamledger.step.Instance;
import org.seamledger.step.Value;

/**
 * The body's rules that go by its tables, from their texts: PSE001 (property sets of the standard), QTY001 (its quantity sets), GEM004
 * (identifiers and types of representations) and GEM052 (contexts). Of values' types, those of single and enumerated values are looked at.
 */
final class StandardRules {

  private final BodyRules model;
  private final StandardSets standard;

  StandardRules(BodyRules model, StandardSets standard) {
    this.model = model;
    this.standard = standard;
  }

  void check() {
    model.all("IFCPROPERTYSET").stream().filter(i -> text(i, "Name").startsWith("Pset_"))
        .forEach(i -> set("PSE001", i, "HasProperties"));
    if (standard.statesQuantities()) {
      model.all("IFCELEMENTQUANTITY").stream().filter(i -> text(i, "Name").startsWith("Qto_")).forEach(this::quantities);
      contexts();
    }
    representations();
  }

  private String text(Instance instance, String attribute) {
    return model.attribute(instance, attribute) instanceof Value.Text t ? t.value() : "";
  }

  private List<Instance> ends(Instance instance, String attribute) {
    return BodyRules.references(model.attribute(instance, attribute)).stream().flatMap(id -> model.find(id).stream()).toList();
  }

  private void quantities(Instance instance) {
    set("QTY001", instance, "Quantities");
    if (!text(instance, "MethodOfMeasurement").equals("BaseQuantities")) {
      model.broken("QTY001", instance);
    }
  }

  private void set(String rule, Instance instance, String attribute) {
    Optional<StandardSet> named = standard.named(text(instance, "Name"));
    if (named.isEmpty() || !ends(instance, attribute).stream().allMatch(i -> fits(i, named.get()))
        || !owners(instance).stream().allMatch(o -> applies(o, named.get()))) {
      model.broken(rule, instance);
    }
  }

  private boolean fits(Instance item, StandardSet set) {
    Item expected = set.items().get(text(item, "Name"));
    if (expected == null || !item.keyword().equals(expected.entity().toUpperCase(Locale.ROOT))) {
      return false;
    }
    if (model.attribute(item, "NominalValue") instanceof Value.Typed t) {
      return expected.dataType().isEmpty() || t.keyword().equals(expected.dataType().toUpperCase(Locale.ROOT));
    }
    return !(model.attribute(item, "EnumerationValues") instanceof Value.Aggregate a) || expected.values().isEmpty()
        || a.items().stream().allMatch(v -> v instanceof Value.Typed t && t.value() instanceof Value.Text w
            && expected.values().contains(w.value()));
  }

  /** Whom a set says something of: what relations name, and types that hold it. */
  private List<Instance> owners(Instance set) {
    List<Instance> owners = new ArrayList<>();
    for (Instance relation : model.all("IFCRELDEFINESBYPROPERTIES")) {
      if (BodyRules.references(model.attribute(relation, "RelatingPropertyDefinition")).contains(set.id())) {
        owners.addAll(ends(relation, "RelatedObjects"));
      }
    }
    model.all("IFCTYPEOBJECT").stream().filter(t -> BodyRules.references(model.attribute(t, "HasPropertySets")).contains(set.id()))
        .forEach(owners::add);
    return owners;
  }

  private boolean applies(Instance owner, StandardSet set) {
    boolean isType = model.isA(owner.keyword(), "IFCTYPEOBJECT");
    return (!isType || set.onTypes()) && set.applicable().stream().anyMatch(a -> applies(owner, isType, a.split("/")));
  }

  /** Tables for IFC4 name the class of an occurrence where they mean its type's, too. */
  private boolean applies(Instance owner, boolean isType, String... wanted) {
    String entity = wanted[0].toUpperCase(Locale.ROOT);
    boolean isOne = model.isA(owner.keyword(), entity) || isType && model.isA(owner.keyword(), entity + "TYPE");
    return isOne && (wanted.length == 1 || model.attribute(owner, "PredefinedType").equals(new Value.Enumeration(wanted[1])));
  }

  private void representations() {
    for (Instance product : model.all("IFCPRODUCT")) {
      for (Instance shape : ends(product, "Representation")) {
        for (Instance i : ends(shape, "Representations")) {
          String type = text(i, "RepresentationType");
          boolean typed = switch (i.keyword()) {
            case "IFCSHAPEREPRESENTATION" -> standard.isShapeType(type);
            case "IFCTOPOLOGYREPRESENTATION" -> standard.isTopologyType(type);
            default -> true;
          };
          if (!typed || !standard.isIdentifier(text(i, "RepresentationIdentifier"))) {
            model.broken("GEM004", i);
          }
        }
      }
    }
  }

  private void contexts() {
    List<Instance> parts = model.all("IFCGEOMETRICREPRESENTATIONSUBCONTEXT");
    List<Long> divided = parts.stream().flatMap(p -> BodyRules.references(model.attribute(p, "ParentContext")).stream()).toList();
    model.all("IFCGEOMETRICREPRESENTATIONCONTEXT").stream()
        .filter(c -> c.keyword().equals("IFCGEOMETRICREPRESENTATIONCONTEXT") && !divided.contains(c.id()))
        .forEach(c -> model.broken("GEM052", c));
    parts.stream().filter(p -> !standard.isIdentifier(text(p, "ContextIdentifier"))).forEach(p -> model.broken("GEM052", p));
  }
}
