package org.seamledger.junction;

import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.Arrays;
import java.util.Iterator;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What was measured along a junction line, by name: numbers (the unit is in the name: {@code …Degrees}, {@code …M}), words and flags.
 * The rules see these and nothing else. {@link FactList} has every name.
 */
public final class Facts {

  /** Sorted; two arrays, since there are hundreds of thousands of facts, and each would take an entry of a map. */
  private final String[] names;
  private final Object[] values;

  private Facts(SortedMap<String, Object> sorted) {
    this.names = sorted.keySet().toArray(String[]::new);
    this.values = sorted.values().toArray();
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
    return new AsMap();
  }

  /** The value by name; null where it was not measured. */
  private Object value(String name) {
    // Whoever asks mostly names it by the constant that it was noted by.
    for (int i = 0; i < names.length; i++) {
      if (names[i] == name) {
        return values[i];
      }
    }
    int at = Arrays.binarySearch(names, name);
    return at < 0 ? null : values[at];
  }

  /** Whether it was measured. */
  public boolean has(String name) {
    return value(name) != null;
  }

  /** A number by name, or NaN where it was not measured. */
  public double number(String name) {
    return value(name) instanceof Number n ? n.doubleValue() : Double.NaN;
  }

  /** A word by name, or the empty string. */
  public String word(String name) {
    return value(name) instanceof String s ? s : "";
  }

  /** A flag by name; false where it was not measured. */
  public boolean flag(String name) {
    return Boolean.TRUE.equals(value(name));
  }

  /** A builder that begins with these facts. */
  public Builder toBuilder() {
    Builder b = new Builder();
    b.values.putAll(asMap());
    return b;
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof Facts f && Arrays.equals(f.names, names) && Arrays.equals(f.values, values);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(names) + Arrays.hashCode(values);
  }

  @Override
  public String toString() {
    return asMap().toString();
  }

  /** The facts as they stand, by name, unmodifiable. */
  private final class AsMap extends AbstractMap<String, Object> {

    @Override
    public Object get(Object name) {
      return name instanceof String s ? value(s) : null;
    }

    @Override
    public boolean containsKey(Object name) {
      return get(name) != null;
    }

    @Override
    public int size() {
      return names.length;
    }

    @Override
    public Set<Entry<String, Object>> entrySet() {
      return new AbstractSet<>() {
        @Override
        public Iterator<Entry<String, Object>> iterator() {
          return new Entries();
        }

        @Override
        public int size() {
          return names.length;
        }
      };
    }
  }

  private final class Entries implements Iterator<Map.Entry<String, Object>> {
    private int next;

    @Override
    public boolean hasNext() {
      return next < names.length;
    }

    @Override
    public Map.Entry<String, Object> next() {
      if (next == names.length) {
        throw new NoSuchElementException();
      }
      int at = next++;
      return Map.entry(names[at], values[at]);
    }
  }

  /** Collects facts; a number that is not finite is left out. */
  public static final class Builder {
    private final SortedMap<String, Object> values = new TreeMap<>();

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
      return new Facts(values);
    }
  }
}
