package org.seamledger.enrich;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.seamledger.schema.AttributeDefinition;
import org.seamledger.schema.EntityDefinition;
import org.seamledger.schema.SchemaTables;
import org.seamledger.schema.TypeDefinition;
import org.seamledger.step.Instance;
import org.seamledger.step.StepLiterals;
import org.seamledger.step.Value;

/**
 * The instances that are added to a model, in the order in which they are named. Attributes go by their names; those that the model's
 * schema doesn't have are left away, so that one description serves every schema.
 */
final class InstanceDraft {

  private static final Value OMITTED = new Value.Omitted();

  private final SchemaTables tables;
  private final StringBuilder text = new StringBuilder();
  private final Map<String, Value.Reference> shared = new HashMap<>();
  private long last;

  /** @param last the largest id that the model has */
  InstanceDraft(SchemaTables tables, long last) {
    this.tables = tables;
    this.last = last;
  }

  /**
   * Adds an instance.
   *
   * @param entity its class, as the schemas write it
   * @param attributes names and values by turns
   */
  Value.Reference add(String entity, Object... attributes) {
    EntityDefinition definition = tables.entity(entity.toUpperCase(Locale.ROOT))
        .orElseThrow(() -> new IllegalArgumentException("no class " + entity + " in this schema"));
    Map<String, Value> named = new HashMap<>();
    for (int i = 0; i < attributes.length; i += 2) {
      named.put((String) attributes[i], value(attributes[i + 1]));
    }
    List<Value> parameters = new ArrayList<>();
    for (AttributeDefinition a : definition.attributes()) {
      parameters.add(a.derived() ? new Value.Derived() : named.getOrDefault(a.name(), OMITTED));
    }
    Instance instance = new Instance(++last, definition.keyword(), parameters);
    text.append(StepLiterals.of(instance)).append('\n');
    return new Value.Reference(instance.id());
  }

  /** The instance that was added with the same words before, or else a new one. */
  Value.Reference shared(String entity, Object... attributes) {
    String key = entity + Arrays.deepToString(attributes);
    Value.Reference known = shared.get(key);
    if (known == null) {
      known = add(entity, attributes);
      shared.put(key, known);
    }
    return known;
  }

  /** Type of a class's attribute in upper case; the empty string where the class has no such attribute. */
  String attributeType(String entity, String attribute) {
    return tables.entity(entity.toUpperCase(Locale.ROOT)).stream().flatMap(e -> e.attributes().stream())
        .filter(a -> a.name().equals(attribute)).map(AttributeDefinition::type).findFirst().orElse("");
  }

  /** Whether an enumeration has a word. */
  boolean hasWord(String enumeration, String word) {
    return tables.type(enumeration.toUpperCase(Locale.ROOT)).map(TypeDefinition::items).orElse(List.of()).contains(word);
  }

  /** A number that says by its type what it measures, such as {@code IFCLENGTHMEASURE(2.5)}. */
  static Value typed(String type, Object value) {
    return new Value.Typed(type.toUpperCase(Locale.ROOT), value(value));
  }

  static Value word(String word) {
    return new Value.Enumeration(word);
  }

  static Value list(List<? extends Value> items) {
    return new Value.Aggregate(List.copyOf(items));
  }

  static Value numbers(double... numbers) {
    return new Value.Aggregate(Arrays.stream(numbers).mapToObj(d -> (Value) new Value.Real(d)).toList());
  }

  private static Value value(Object o) {
    if (o instanceof Value v) {
      return v;
    } else if (o instanceof String s) {
      return new Value.Text(s);
    } else if (o instanceof Double d) {
      return new Value.Real(d);
    } else if (o instanceof Integer i) {
      return new Value.Whole(i);
    } else if (o instanceof Boolean b) {
      return word(b ? "T" : "F");
    } else if (o == null) {
      return OMITTED;
    }
    throw new IllegalArgumentException("no value of an exchange structure: " + o.getClass());
  }

  /** All instances, a line each. */
  String text() {
    return text.toString();
  }
}
