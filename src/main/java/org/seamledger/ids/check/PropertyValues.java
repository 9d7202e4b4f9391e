package org.seamledger.ids.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.ids.IfcLiteral;
import org.seamledger.ids.check.PropertySets.IfcProperty;
import org.seamledger.schema.AttributeDefinition;
import org.seamledger.step.Instance;
import org.seamledger.step.Value;

/** The values of a property, each with its type, in SI units. Complex properties and references have none, by the body's cases. */
final class PropertyValues {

  /** @param type keyword of its type */
  record Typed(String type, IfcLiteral literal) {
  }

  private final ModelAccess model;
  private final List<Typed> found = new ArrayList<>();

  private PropertyValues(ModelAccess model) {
    this.model = model;
  }

  static List<Typed> of(IfcProperty property, ModelAccess model) {
    PropertyValues values = new PropertyValues(model);
    if (property.attribute().isEmpty()) {
      values.read(property.holder());
    } else {
      values.attribute(property.holder(), property.attribute());
    }
    return values.found;
  }

  private void read(Instance p) {
    switch (p.keyword()) {
      case "IFCPROPERTYSINGLEVALUE" -> add(p, "NominalValue", unit(p, "Unit"));
      case "IFCPROPERTYENUMERATEDVALUE" -> add(p, "EnumerationValues",
          model.target(p, "EnumerationReference").map(e -> unit(e, "Unit")).orElse(null));
      case "IFCPROPERTYLISTVALUE" -> add(p, "ListValues", unit(p, "Unit"));
      case "IFCPROPERTYBOUNDEDVALUE" -> {
        add(p, "UpperBoundValue", unit(p, "Unit"));
        add(p, "LowerBoundValue", unit(p, "Unit"));
        add(p, "SetPointValue", unit(p, "Unit"));
      }
      case "IFCPROPERTYTABLEVALUE" -> {
        add(p, "DefiningValues", unit(p, "DefiningUnit"));
        add(p, "DefinedValues", unit(p, "DefinedUnit"));
      }
      default -> {
        if (model.isA(p, "IFCPHYSICALSIMPLEQUANTITY")) {
          quantity(p);
        }
      }
    }
  }

  /** A quantity's value is its first attribute behind the unit: LengthValue, AreaValue … */
  private void quantity(Instance p) {
    List<AttributeDefinition> attributes = model.attributes(p);
    for (int i = 0; i < attributes.size() - 1; i++) {
      if (attributes.get(i).name().equals("Unit")) {
        AttributeDefinition value = attributes.get(i + 1);
        add(p.parameter(i + 1), value.type(), unit(p, "Unit"));
      }
    }
  }

  private void attribute(Instance set, String name) {
    AttributeDefinition attribute = model.attributes(set).stream().filter(a -> a.name().equals(name)).findFirst().orElseThrow();
    add(model.value(set, name), attribute.type(), null);
  }

  private SiUnits.Conversion unit(Instance p, String attribute) {
    Optional<Instance> unit = model.target(p, attribute);
    return unit.map(u -> model.units().of(u.id())).orElse(null);
  }

  private void add(Instance p, String attribute, SiUnits.Conversion unit) {
    add(model.value(p, attribute), "", unit);
  }

  private void add(Value value, String declared, SiUnits.Conversion unit) {
    if (value instanceof Value.Aggregate list) {
      list.items().forEach(item -> add(item, declared, unit));
      return;
    }
    String type = value instanceof Value.Typed t ? t.keyword() : declared;
    model.literal(value, declared, unit).ifPresent(literal -> found.add(new Typed(type, literal)));
  }
}
