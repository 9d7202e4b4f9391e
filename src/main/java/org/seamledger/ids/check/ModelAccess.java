package org.seamledger.ids.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamledger.ids.IfcLiteral;
import org.seamledger.ids.XsdBase;
import org.seamledger.schema.AttributeDefinition;
import org.seamledger.schema.BaseType;
import org.seamledger.schema.EntityDefinition;
import org.seamledger.schema.IfcRelease;
import org.seamledger.schema.SchemaTables;
import org.seamledger.schema.TypeDefinition;
import org.seamledger.step.Instance;
import org.seamledger.step.StepFile;
import org.seamledger.step.Value;

/** A model's instances with their attributes by name, as its own schema orders them. What isn't there is empty, never a fault. */
final class ModelAccess {

  private static final Value OMITTED = new Value.Omitted();

  private final StepFile file;
  private final IfcRelease release;
  private final SchemaTables tables;
  private final ModelRelations relations;
  private final SiUnits units;

  ModelAccess(StepFile file, IfcRelease release) {
    this.file = file;
    this.release = release;
    this.tables = release.tables();
    this.relations = new ModelRelations(file, tables);
    this.units = new SiUnits(this);
  }

  StepFile file() {
    return file;
  }

  IfcRelease release() {
    return release;
  }

  SchemaTables tables() {
    return tables;
  }

  ModelRelations relations() {
    return relations;
  }

  SiUnits units() {
    return units;
  }

  Optional<Instance> find(long id) {
    return file.find(id);
  }

  boolean isA(Instance instance, String supertype) {
    return tables.isA(instance.keyword(), supertype);
  }

  /** An attribute as it stands, omitted where the class has none of that name. */
  Value value(Instance instance, String attribute) {
    Optional<EntityDefinition> entity = tables.entity(instance.keyword());
    int place = entity.map(e -> e.indexOf(attribute)).orElse(-1);
    return place < 0 ? OMITTED : instance.parameter(place);
  }

  String text(Instance instance, String attribute) {
    return value(instance, attribute) instanceof Value.Text t ? t.value() : "";
  }

  /** The instance that an attribute refers to. */
  Optional<Instance> target(Instance instance, String attribute) {
    return value(instance, attribute) instanceof Value.Reference r ? find(r.id()) : Optional.empty();
  }

  /** The instances that an attribute's list refers to, or the one that it refers to. */
  List<Instance> targets(Instance instance, String attribute) {
    List<Instance> found = new ArrayList<>();
    Value value = value(instance, attribute);
    if (value instanceof Value.Aggregate a) {
      a.items().forEach(item -> {
        if (item instanceof Value.Reference r) {
          find(r.id()).ifPresent(found::add);
        }
      });
    } else if (value instanceof Value.Reference r) {
      find(r.id()).ifPresent(found::add);
    }
    return found;
  }

  static String word(Value value) {
    return value instanceof Value.Enumeration e ? e.value().toUpperCase(Locale.ROOT) : "";
  }

  /** NaN where it is no number. */
  static double number(Value value) {
    return value instanceof Value.Real r ? r.value() : value instanceof Value.Whole w ? w.value()
        : value instanceof Value.Typed t ? number(t.value()) : Double.NaN;
  }

  static boolean isOmitted(Value value) {
    return value instanceof Value.Omitted || value instanceof Value.Derived;
  }

  /** A value as an IDS compares it; empty where it states nothing (no text, unknown), or is a list or an object. */
  Optional<IfcLiteral> literal(Value value, String declared) {
    return literal(value, declared, null);
  }

  /** @param unit of a value that states its own; null for the project's unit */
  Optional<IfcLiteral> literal(Value value, String declared, SiUnits.Conversion unit) {
    if (value instanceof Value.Typed t) {
      return literal(t.value(), t.keyword(), unit);
    }
    if (value instanceof Value.Text t) {
      return t.value().isEmpty() ? Optional.empty() : Optional.of(IfcLiteral.text(t.value()));
    }
    if (value instanceof Value.Enumeration e) {
      return word(e.value(), declared);
    }
    double number = number(value);
    return Double.isNaN(number) ? Optional.empty() : Optional.of(numeric(number, value, declared, unit));
  }

  private IfcLiteral numeric(double number, Value value, String declared, SiUnits.Conversion unit) {
    Optional<XsdBase> base = tables.type(declared).flatMap(XsdBase::of).or(() -> XsdBase.simple(declared));
    boolean whole = base.map(b -> b == XsdBase.INTEGER).orElse(value instanceof Value.Whole);
    if (whole && number == Math.rint(number) && Math.abs(number) < 1e18) {
      return IfcLiteral.whole((long) number);
    }
    SiUnits.Conversion conversion = unit != null && !SiUnits.unitOf(declared).isEmpty() ? unit : units.of(declared);
    return IfcLiteral.real(conversion.apply(number));
  }

  private Optional<IfcLiteral> word(String word, String declared) {
    BaseType base = tables.type(declared).map(TypeDefinition::base).orElse(declared.equals("BOOLEAN") || declared.equals("LOGICAL")
        ? BaseType.LOGICAL : BaseType.OTHER);
    if (base != BaseType.BOOLEAN && base != BaseType.LOGICAL) {
      return Optional.of(IfcLiteral.text(word));
    }
    return switch (word.toUpperCase(Locale.ROOT)) {
      case "T", "TRUE" -> Optional.of(IfcLiteral.truth("true"));
      case "F", "FALSE" -> Optional.of(IfcLiteral.truth("false"));
      default -> Optional.empty();
    };
  }

  /** The attributes of a class; none where the schema doesn't have it. */
  List<AttributeDefinition> attributes(Instance instance) {
    return tables.entity(instance.keyword()).map(EntityDefinition::attributes).orElse(List.of());
  }
}
