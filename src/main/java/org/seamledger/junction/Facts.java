package org.seamledger.junction;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * What was measured along a junction line, by name: numbers (the unit is in the name: {@code …Degrees}, {@code …M}), words and flags.
 * The rules see these and nothing else. {@link FactList} has every name.
 */
public final class Facts {

  private final Map<String, Object> values;

  private Facts(Map<String, Object> values) {
    this.values = Collections.unmodifiableMap(values);
  }

  /** No facts yet. */
  public static Builder builder() {
    return new Builder();
  }

  /** Facts from {@link #asMap}. */
  public static Facts of(Map<String, Object> values) {
    return new Facts(new TreeMap<>(values));
  }

  /** All facts, sorted by name; values are Double, Integer, Boolean or String. */
  public Map<String, Object> asMap() {
    return values;
  }

  /** Whether it was measured. */
  public boolean has(String name) {
    return values.containsKey(name);
  }

  /** A number by name, or NaN where it was not measured. */
  public double number(String name) {
    return values.get(name) instanceof Number n ? n.doubleValue() : Double.NaN;
  }

  /** A word by name, or the empty string. */
  public String word(String name) {
    return values.get(name) instanceof String s ? s : "";
  }

  /** A flag by name; false where it was not measured. */
  public boolean flag(String name) {
    return Boolean.TRUE.equals(values.get(name));
  }

  /** A builder that begins with these facts. */
  public Builder toBuilder() {
    Builder b = new Builder();
    b.values.putAll(values);
    return b;
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof Facts f && f.values.equals(values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  @Override
  public String toString() {
    return values.toString();
  }

  /** Collects facts; a number that is not finite is left out. */
  public static final class Builder {
    private final Map<String, Object> values = new TreeMap<>();

    /** A number in the unit that its name ends in. */
    public Builder number(String name, double value) {
      if (Double.isFinite(value)) {
        values.put(name, value == 0 ? 0.0 : value);
      }
      return this;
    }

    /** A whole number. */
    public Builder count(String name, int value) {
      values.put(name, value);
      return this;
    }

    /** A word. */
    public Builder word(String name, String value) {
      values.put(name, value);
      return this;
    }

    /** True or false. */
    public Builder flag(String name, boolean value) {
      values.put(name, value);
      return this;
    }

    /** The facts so far. */
    public Facts build() {
      return new Facts(new TreeMap<>(values));
    }
  }
}
