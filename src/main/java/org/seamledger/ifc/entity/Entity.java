package org.seamledger.ifc.entity;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import org.seamledger.step.Instance;
import org.seamledger.step.Value;

/**
 * An instance with typed access to its attributes. Whatever does not fit ends in a {@link EntityProblem} that names the instance.
 *
 * <p>Lengths come in metres, plane angles in radians.
 */
public final class Entity {

  private final Model model;
  private final Instance instance;

  Entity(Model model, Instance instance) {
    this.model = model;
    this.instance = instance;
  }

  public long id() {
    return instance.id();
  }

  public String keyword() {
    return instance.keyword();
  }

  public boolean is(String keyword) {
    return instance.keyword().equals(keyword);
  }

  /** Keyword and id, for messages. */
  @Override
  public String toString() {
    return instance.keyword() + " #" + instance.id();
  }

  Value value(int i) {
    Value v = instance.parameter(i);
    return v instanceof Value.Typed t ? t.value() : v;
  }

  /** As it stands, with the type's keyword where there is one. */
  public Value raw(int i) {
    return instance.parameter(i);
  }

  public boolean has(int i) {
    Value v = instance.parameter(i);
    return !(v instanceof Value.Omitted || v instanceof Value.Derived);
  }

  /** Id that attribute {@code i} refers to. */
  long reference(int i) {
    if (value(i) instanceof Value.Reference r) {
      return r.id();
    }
    throw mismatch(i, "a reference");
  }

  /** Id that attribute {@code i} refers to, or -1 where it is omitted. */
  public long optionalReference(int i) {
    return value(i) instanceof Value.Reference r ? r.id() : -1;
  }

  public Entity entity(int i) {
    return model.get(reference(i));
  }

  /** The instance that attribute {@code i} refers to, or null where it is omitted. */
  public Entity optionalEntity(int i) {
    return has(i) ? entity(i) : null;
  }

  public List<Value> list(int i) {
    if (value(i) instanceof Value.Aggregate a) {
      return a.items();
    }
    throw mismatch(i, "a list");
  }

  /** Ids in a list of references; other things in it are a problem. */
  public List<Long> references(int i) {
    List<Long> ids = new ArrayList<>();
    for (Value v : list(i)) {
      if (!(v instanceof Value.Reference r)) {
        throw mismatch(i, "a list of references");
      }
      ids.add(r.id());
    }
    return ids;
  }

  public List<Entity> entities(int i) {
    List<Entity> entities = new ArrayList<>();
    for (long id : references(i)) {
      entities.add(model.get(id));
    }
    return entities;
  }

  /** The members of a set, each once, in the order of their first mention: files repeat some, which makes no more of them. */
  public List<Entity> members(int i) {
    List<Entity> members = new ArrayList<>();
    for (long id : new LinkedHashSet<>(references(i))) {
      members.add(model.get(id));
    }
    return members;
  }

  public double number(int i) {
    return number(value(i), i);
  }

  public double optionalNumber(int i, double otherwise) {
    return has(i) ? number(i) : otherwise;
  }

  private double number(Value v, int i) {
    double d = v instanceof Value.Real r ? r.value() : v instanceof Value.Whole w ? w.value()
        : v instanceof Value.Typed t ? number(t.value(), i) : Double.NaN;
    if (!Double.isFinite(d)) {
      throw mismatch(i, "a finite number");
    }
    return d;
  }

  public List<Double> numbers(int i) {
    List<Double> numbers = new ArrayList<>();
    for (Value v : list(i)) {
      numbers.add(number(v, i));
    }
    return numbers;
  }

  /** A list of lists of numbers. */
  public List<List<Double>> matrix(int i) {
    List<List<Double>> rows = new ArrayList<>();
    for (Value v : list(i)) {
      if (!(v instanceof Value.Aggregate row)) {
        throw mismatch(i, "a list of lists of numbers");
      }
      List<Double> numbers = new ArrayList<>(row.items().size());
      for (Value n : row.items()) {
        numbers.add(number(n, i));
      }
      rows.add(numbers);
    }
    return rows;
  }

  /** Whole numbers of a list. */
  public int[] wholes(int i) {
    return wholes(value(i), i);
  }

  public int[] wholes(Value v, int i) {
    if (!(v instanceof Value.Aggregate a)) {
      throw mismatch(i, "a list of whole numbers");
    }
    int[] numbers = new int[a.items().size()];
    for (int k = 0; k < numbers.length; k++) {
      double d = number(a.items().get(k), i);
      if (d != Math.rint(d) || Math.abs(d) > Integer.MAX_VALUE) {
        throw mismatch(i, "a list of whole numbers");
      }
      numbers[k] = (int) d;
    }
    return numbers;
  }

  public Model model() {
    return model;
  }

  /** One length unit of the model, in metres. */
  public double metres() {
    return model.units().metres();
  }

  /** A length in metres. */
  public double length(int i) {
    return number(i) * model.units().metres();
  }

  public double optionalLength(int i, double otherwise) {
    return has(i) ? length(i) : otherwise;
  }

  /** A length above zero, in metres. */
  public double positiveLength(int i) {
    double l = length(i);
    if (!(l > 0)) {
      throw EntityProblem.broken(this + ": attribute " + (i + 1) + " should be a length above zero, found " + number(i));
    }
    return l;
  }

  /** A plane angle in radians. */
  public double angle(int i) {
    return number(i) * model.units().radians();
  }

  /** Text, or the empty string where there is none. */
  public String text(int i) {
    return value(i) instanceof Value.Text t ? t.value() : "";
  }

  /** An enumeration's word in upper case, or the empty string where there is none. */
  public String word(int i) {
    return value(i) instanceof Value.Enumeration e ? e.value().toUpperCase(java.util.Locale.ROOT) : "";
  }

  /** True for {@code .T.}, and where the attribute is omitted if {@code otherwise} says so. */
  public boolean flag(int i, boolean otherwise) {
    return switch (word(i)) {
      case "T", "TRUE" -> true;
      case "F", "FALSE" -> false;
      default -> otherwise;
    };
  }

  public EntityProblem mismatch(int i, String expected) {
    return EntityProblem.broken(this + ": attribute " + (i + 1) + " should be " + expected);
  }
}
