package org.seamledger.ids.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.ids.ValueConstraint;
import org.seamledger.ids.check.ModelRelations.Link;
import org.seamledger.schema.AttributeDefinition;
import org.seamledger.step.Instance;
import org.seamledger.step.Value;

/**
 * An element's property and quantity sets: its own, and of its type's what it doesn't override. Properties are read when a set is asked
 * for.
 */
final class PropertySets {

  private static final String NAMES_END = "Description";

  private final ModelAccess model;
  private final Map<String, List<Instance>> own = new LinkedHashMap<>();
  private final Map<String, List<Instance>> inherited = new LinkedHashMap<>();
  private final Map<String, List<IfcProperty>> read = new LinkedHashMap<>();
  private final Map<IfcProperty, List<PropertyValues.Typed>> values = new IdentityHashMap<>();

  PropertySets(Subject subject) {
    model = subject.model();
    for (long id : model.relations().of(Link.PROPERTY_SET, subject.id())) {
      model.find(id).ifPresent(set -> add(set, own));
    }
    model.targets(subject.instance(), "HasPropertySets").forEach(set -> add(set, own));
    if (model.isA(subject.instance(), "IFCOBJECT")) {
      subject.type().ifPresent(type -> model.targets(type, "HasPropertySets").forEach(set -> add(set, inherited)));
    } else if (!model.isA(subject.instance(), "IFCROOT")) {
      for (long id : model.relations().extendedProperties(subject.id())) {
        model.find(id).ifPresent(set -> add(set, own));
      }
    }
  }

  private void add(Instance set, Map<String, List<Instance>> to) {
    to.computeIfAbsent(model.text(set, "Name"), name -> new ArrayList<>()).add(set);
  }

  /** The sets whose names fit, each with all its properties. */
  Map<String, List<IfcProperty>> matching(ValueConstraint name) {
    Map<String, List<IfcProperty>> found = new LinkedHashMap<>();
    Set<String> names = new LinkedHashSet<>(own.keySet());
    names.addAll(inherited.keySet());
    for (String set : names) {
      if (name.matches(set)) {
        found.put(set, read.computeIfAbsent(set, this::properties));
      }
    }
    return found;
  }

  /** The values of one of the properties. */
  List<PropertyValues.Typed> values(IfcProperty property) {
    return values.computeIfAbsent(property, p -> PropertyValues.of(p, model));
  }

  private List<IfcProperty> properties(String set) {
    List<IfcProperty> found = new ArrayList<>();
    own.getOrDefault(set, List.of()).forEach(s -> properties(s, found));
    Set<String> overridden = new HashSet<>();
    found.forEach(p -> overridden.add(p.name()));
    List<IfcProperty> ofType = new ArrayList<>();
    inherited.getOrDefault(set, List.of()).forEach(s -> properties(s, ofType));
    ofType.stream().filter(p -> !overridden.contains(p.name())).forEach(found::add);
    return found;
  }

  private void properties(Instance set, List<IfcProperty> found) {
    String attribute = switch (set.keyword()) {
      case "IFCELEMENTQUANTITY" -> "Quantities";
      case "IFCPROPERTYSET" -> "HasProperties";
      case "IFCEXTENDEDMATERIALPROPERTIES" -> "ExtendedProperties";
      default -> "Properties";
    };
    if (model.tables().entity(set.keyword()).filter(e -> e.indexOf(attribute) >= 0).isPresent()) {
      model.targets(set, attribute).forEach(p -> found.add(new IfcProperty(model.text(p, "Name"), p, "")));
      return;
    }
    boolean named = true;
    for (AttributeDefinition stated : model.attributes(set)) {
      Value value = model.value(set, stated.name());
      if (!named && !ModelAccess.isOmitted(value)) {
        found.add(new IfcProperty(stated.name(), set, stated.name()));
      }
      named &= !stated.name().equals(NAMES_END);
    }
  }

  /**
   * A property.
   *
   * @param holder the property itself, or a predefined set that states it as an attribute
   * @param attribute of a predefined set, else empty
   */
  record IfcProperty(String name, Instance holder, String attribute) {
  }
}
