package org.seamledger.ids;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.seamledger.ids.IfcLiteral.Kind;

/**
 * What a value has to be: a simple value, or a restriction: one of an enumeration, one of the patterns, all bounds and all lengths.
 *
 * @param base of a restriction; empty for a simple value
 * @param values a simple value, or an enumeration
 * @param lengths fewest and most characters; -1 where there is no limit
 */
public record ValueConstraint(Optional<XsdBase> base, List<String> values, List<XmlPattern> patterns, List<Bound> bounds, Lengths lengths) {

  /** A pattern as it was written, and as it is run. */
  record XmlPattern(String source, Pattern compiled) {

    boolean matches(String text) {
      try {
        return compiled.matcher(new CountedText(text)).matches();
      } catch (CountedText.TooLongException | StackOverflowError e) {
        return false;
      }
    }
  }

  /** @param lower whether values below are out, else those above */
  record Bound(String value, boolean lower, boolean inclusive) {

    boolean allows(IfcLiteral literal) {
      if (literal.isNumber()) {
        return number(literal);
      }
      return XsdBase.compareInTime(literal.text(), value).map(order -> order == 0 ? inclusive : order > 0 == lower).orElse(false);
    }

    private boolean number(IfcLiteral literal) {
      double limit = XsdBase.number(value);
      if (literal.kind() == Kind.WHOLE && limit == Math.rint(limit)) {
        return literal.number() == limit ? inclusive : literal.number() > limit == lower;
      }
      return lower ? Precision.above(literal.number(), limit, inclusive) : Precision.below(literal.number(), limit, inclusive);
    }

    String words() {
      return (lower ? inclusive ? "at least " : "above " : inclusive ? "at most " : "below ") + value;
    }
  }

  /** In characters of Unicode. */
  record Lengths(int least, int most) {
    static final Lengths ANY = new Lengths(-1, -1);

    boolean allow(String text) {
      int length = text.codePointCount(0, text.length());
      return length >= least && (most < 0 || length <= most);
    }

    String words() {
      return least == most ? "of " + least + " characters" : (least >= 0 ? "of at least " + least : "")
          + (least >= 0 && most >= 0 ? " and " : "") + (most >= 0 ? "of at most " + most : "") + " characters";
    }
  }

  public ValueConstraint {
    values = List.copyOf(values);
    patterns = List.copyOf(patterns);
    bounds = List.copyOf(bounds);
  }

  static ValueConstraint simple(String value) {
    return new ValueConstraint(Optional.empty(), List.of(value), List.of(), List.of(), Lengths.ANY);
  }

  /** Whether a name is one that is asked for. */
  public boolean matches(String name) {
    return matches(IfcLiteral.text(name));
  }

  public boolean matches(IfcLiteral literal) {
    if (!values.isEmpty() && values.stream().noneMatch(v -> equal(literal, v))) {
      return false;
    }
    if (!patterns.isEmpty() && (literal.kind() != Kind.TEXT || patterns.stream().noneMatch(p -> p.matches(literal.text())))) {
      return false;
    }
    return lengths.allow(literal.text()) && bounds.stream().allMatch(b -> b.allows(literal));
  }

  private static boolean equal(IfcLiteral literal, String value) {
    return switch (literal.kind()) {
      case TEXT -> literal.text().equals(value);
      case REAL -> Precision.equal(literal.number(), XsdBase.number(value));
      case WHOLE -> literal.number() == XsdBase.number(value);
      case TRUTH -> literal.text().equalsIgnoreCase(switch (value) {
        case "1" -> "true";
        case "0" -> "false";
        default -> value;
      });
    };
  }

  /** The value where there is just one. */
  public Optional<String> single() {
    return values.size() == 1 && patterns.isEmpty() && bounds.isEmpty() ? Optional.of(values.get(0)) : Optional.empty();
  }

  /** For a sentence: {@code 'A'}, {@code 'A' or 'B'}, {@code a text like 'A.*'}, {@code at least 2 and below 10}. */
  public String words() {
    List<String> parts = new ArrayList<>();
    if (!values.isEmpty()) {
      parts.add(values.stream().map(StructureCheck::quote).collect(Collectors.joining(" or ")));
    }
    if (!patterns.isEmpty()) {
      parts.add(patterns.stream().map(p -> StructureCheck.quote(p.source())).collect(Collectors.joining(" or ", "a text by the pattern ",
          "")));
    }
    bounds.forEach(b -> parts.add(b.words()));
    if (lengths.least() >= 0 || lengths.most() >= 0) {
      parts.add("a text " + lengths.words());
    }
    return parts.isEmpty() ? "any value" : String.join(" and ", parts);
  }
}
