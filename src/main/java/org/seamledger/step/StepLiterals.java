package org.seamledger.step;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.stream.Collectors;

/** Values as the text of an exchange structure, clause 6 of ISO 10303-21: only characters of its basic alphabet. */
public final class StepLiterals {

  private static final int BASIC_FIRST = 0x20;
  private static final int BASIC_LAST = 0x7E;

  private StepLiterals() {
  }

  /**
   * A value's text.
   *
   * @throws IllegalArgumentException for a real number that is not finite, which no exchange structure can hold
   */
  public static String of(Value value) {
    if (value instanceof Value.Text t) {
      return text(t.value());
    } else if (value instanceof Value.Real r) {
      return real(r.value());
    } else if (value instanceof Value.Whole w) {
      return Long.toString(w.value());
    } else if (value instanceof Value.Reference r) {
      return "#" + r.id();
    } else if (value instanceof Value.Enumeration e) {
      return "." + e.value() + ".";
    } else if (value instanceof Value.Binary b) {
      return "\"" + b.digits() + "\"";
    } else if (value instanceof Value.Typed t) {
      return t.keyword() + (t.value() instanceof Value.Aggregate ? of(t.value()) : "(" + of(t.value()) + ")");
    } else if (value instanceof Value.Aggregate a) {
      return a.items().stream().map(StepLiterals::of).collect(Collectors.joining(",", "(", ")"));
    }
    return value instanceof Value.Derived ? "*" : "$";
  }

  /** An instance's text, its semicolon with it. */
  public static String of(Instance instance) {
    boolean isComplex = instance.keyword().equals(StepFile.COMPLEX);
    String parameters = instance.parameters().stream().map(StepLiterals::of).collect(Collectors.joining(isComplex ? "" : ",", "(", ")"));
    return "#" + instance.id() + "=" + (isComplex ? "" : instance.keyword()) + parameters + ";";
  }

  /** A real number with its point, in the fewest digits that give the same number again. */
  private static String real(double d) {
    if (!Double.isFinite(d)) {
      throw new IllegalArgumentException("no exchange structure holds the number " + d);
    }
    if (d == 0) {
      return "0.";
    }
    double size = Math.abs(d);
    if (size >= 1e-4 && size < 1e15) {
      String plain = BigDecimal.valueOf(d).stripTrailingZeros().toPlainString();
      return plain.indexOf('.') < 0 ? plain + "." : plain;
    }
    String text = Double.toString(d);
    int e = text.indexOf('E');
    return e < 0 ? text : text.substring(0, e).replaceAll("\\.0$", ".") + text.substring(e);
  }

  /** Characters outside the basic alphabet as clause 6.4.3.3 has them: in runs of four hexadecimal digits each, or of eight. */
  private static String text(String s) {
    StringBuilder out = new StringBuilder("'");
    int digits = 0;
    for (int c : s.codePoints().toArray()) {
      int needed = c >= BASIC_FIRST && c <= BASIC_LAST ? 0 : Character.isBmpCodePoint(c) ? 4 : 8;
      if (needed != digits) {
        out.append(digits == 0 ? "" : "\\X0\\").append(needed == 0 ? "" : needed == 4 ? "\\X2\\" : "\\X4\\");
        digits = needed;
      }
      out.append(needed > 0 ? String.format(Locale.ROOT, needed == 4 ? "%04X" : "%08X", c)
          : c == '\'' ? "''" : c == '\\' ? "\\\\" : String.valueOf((char) c));
    }
    return out.append(digits == 0 ? "'" : "\\X0\\'").toString();
  }

  /** The bytes of a text that consists of the basic alphabet. */
  public static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
