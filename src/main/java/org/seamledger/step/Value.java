package org.seamledger.step;

import java.util.List;

/** A parameter of an instance, by the kinds of ISO 10303-21 clause 6. */
public sealed interface Value {

  /** {@code #12} */
  record Reference(long id) implements Value {
  }

  /** {@code 12} */
  record Whole(long value) implements Value {
  }

  /** {@code 1.5E-3}; may be infinite where the text overflows. */
  record Real(double value) implements Value {
  }

  /** {@code 'text'}, its escapes resolved. */
  record Text(String value) implements Value {
  }

  /** {@code .AREA.}, without its dots. */
  record Enumeration(String value) implements Value {
  }

  /** {@code "0FF"}: the hexadecimal digits as they stand. */
  record Binary(String digits) implements Value {
  }

  /** {@code (1., 2.)} */
  record Aggregate(List<Value> items) implements Value {
    public Aggregate {
      items = List.copyOf(items);
    }
  }

  /** {@code IFCBOOLEAN(.T.)}: keyword in upper case. */
  record Typed(String keyword, Value value) implements Value {
  }

  /** {@code $} */
  record Omitted() implements Value {
  }

  /** {@code *} */
  record Derived() implements Value {
  }
}
