package org.seamledger.samples;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * Collects the instances of an exchange structure (ISO 10303-21). Numbers are rounded to fixed decimals, so that every platform writes the
 * same.
 */
final class StepText {

  /** A reference to an instance. */
  record Ref(int id) {
  }

  /** An enumeration value, written between dots. */
  record Word(String value) {
  }

  /** A number with its decimals. */
  record Number(double value, int decimals) {
  }

  /** A value with its type's name. */
  record Typed(String keyword, Object value) {
  }

  /** A derived attribute. */
  static final Object DERIVED = new Object();

  private static final int RATIO_DECIMALS = 15;

  private final List<String> lines = new ArrayList<>();
  private final Map<String, Ref> shared = new HashMap<>();

  static Word word(String value) {
    return new Word(value);
  }

  /** A number without a unit, such as a direction ratio. */
  static Number ratio(double value) {
    return new Number(value, RATIO_DECIMALS);
  }

  Ref add(String keyword, Object... parameters) {
    int id = lines.size() + 1;
    lines.add("#" + id + "=" + keyword + list(List.of(wrap(parameters))) + ";");
    return new Ref(id);
  }

  /** Like {@link #add}, but the same values give the same instance. */
  Ref share(String keyword, Object... parameters) {
    return shared.computeIfAbsent(keyword + list(List.of(wrap(parameters))), k -> add(keyword, parameters));
  }

  /** The data section's lines, in the order of writing or shuffled. */
  List<String> lines(long seed) {
    List<String> ordered = new ArrayList<>(lines);
    if (seed != 0) {
      Collections.shuffle(ordered, new Random(seed));
    }
    return ordered;
  }

  /** {@code List.of} takes no nulls, and a null parameter means an omitted one. */
  private static Object[] wrap(Object[] parameters) {
    Object[] wrapped = new Object[parameters.length];
    for (int i = 0; i < parameters.length; i++) {
      wrapped[i] = parameters[i] == null ? new Word(null) : parameters[i];
    }
    return wrapped;
  }

  private static String list(List<?> items) {
    StringBuilder text = new StringBuilder("(");
    for (int i = 0; i < items.size(); i++) {
      text.append(i == 0 ? "" : ",").append(value(items.get(i)));
    }
    return text.append(')').toString();
  }

  private static String value(Object v) {
    if (v == DERIVED) {
      return "*";
    }
    if (v instanceof Ref r) {
      return "#" + r.id();
    }
    if (v instanceof Word w) {
      return w.value() == null ? "$" : "." + w.value() + ".";
    }
    if (v instanceof Number n) {
      return real(n.value(), n.decimals());
    }
    if (v instanceof Typed t) {
      return t.keyword() + "(" + value(t.value()) + ")";
    }
    if (v instanceof Boolean b) {
      return b ? ".T." : ".F.";
    }
    if (v instanceof Integer i) {
      return i.toString();
    }
    if (v instanceof List<?> l) {
      return list(l);
    }
    if (v instanceof String s) {
      return text(s);
    }
    throw new IllegalArgumentException("no STEP form for " + v.getClass());
  }

  static String real(double value, int decimals) {
    BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN);
    if (rounded.signum() == 0) {
      return "0.";
    }
    String plain = rounded.stripTrailingZeros().toPlainString();
    return plain.indexOf('.') < 0 ? plain + "." : plain;
  }

  /** Apostrophes and reverse solidi doubled, characters outside the basic alphabet as UTF-16 code units in {@code \X2\...\X0\}. */
  static String text(String s) {
    StringBuilder text = new StringBuilder("'");
    boolean wide = false;
    for (char c : s.toCharArray()) {
      boolean plain = c >= ' ' && c <= '~';
      if (plain == wide) {
        text.append(wide ? "\\X0\\" : "\\X2\\");
        wide = !wide;
      }
      if (plain) {
        text.append(c == '\'' || c == '\\' ? "" + c + c : "" + c);
      } else {
        text.append(String.format("%04X", (int) c));
      }
    }
    return text.append(wide ? "\\X0\\'" : "'").toString();
  }
}
