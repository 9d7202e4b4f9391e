package org.seamledger.ids;

import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/**
 * A regular expression of XML Schema (Part 2, appendix F) as one of {@code java.util.regex}. The two differ: here the whole text has to
 * match, {@code ^} and {@code $} are letters like others, there are no groups without number, no back references, no lazy quantifiers,
 * {@code \w} and {@code \d} are of all scripts, {@code \i} and {@code \c} are characters of XML names, and a class may have another
 * subtracted: {@code [a-z-[aeiou]]}.
 */
final class XsdPattern {

  /** NameStartChar and NameChar of XML 1.0, fifth edition, productions 4 and 4a. */
  private static final String NAME_START = ":A-Z_a-z\\u00C0-\\u00D6\\u00D8-\\u00F6\\u00F8-\\u02FF\\u0370-\\u037D\\u037F-\\u1FFF"
      + "\\u200C-\\u200D"
      + "\\u2070-\\u218F\\u2C00-\\u2FEF\\u3001-\\uD7FF\\uF900-\\uFDCF\\uFDF0-\\uFFFD\\x{10000}-\\x{EFFFF}";
  private static final String NAME = NAME_START + "\\-.0-9\\u00B7\\u0300-\\u036F\\u203F-\\u2040";

  private final String source;
  private final StringBuilder java = new StringBuilder();
  private int at;

  private XsdPattern(String source) {
    this.source = source;
  }

  /** @throws PatternSyntaxException where it is none by XML Schema; its description and index say what and where */
  static Pattern compile(String source) {
    XsdPattern translation = new XsdPattern(source);
    translation.expression(0);
    return Pattern.compile(translation.java.toString());
  }

  private PatternSyntaxException error(String expected) {
    return new PatternSyntaxException(expected, source, at);
  }

  private boolean more() {
    return at < source.length();
  }

  private char peek() {
    if (!more()) {
      throw error("more of the pattern");
    }
    return source.charAt(at);
  }

  /** Branches, up to the end or the bracket that closes them. */
  private void expression(int depth) {
    if (depth > 500) {
      throw error("brackets at most 500 deep");
    }
    while (more() && peek() != ')') {
      if (peek() == '|') {
        java.append('|');
        at++;
      } else {
        atom(depth);
        quantifier();
      }
    }
    if (more() && depth == 0) {
      throw error("an opening bracket before the closing one");
    }
  }

  private void atom(int depth) {
    char c = peek();
    switch (c) {
      case '(' -> {
        at++;
        if (more() && peek() == '?') {
          throw error("an expression behind the bracket");
        }
        java.append("(?:");
        expression(depth + 1);
        if (!more()) {
          throw error("a closing bracket");
        }
        at++;
        java.append(')');
      }
      case '[' -> characterClass();
      case '\\' -> escape(false);
      case '.' -> {
        at++;
        java.append("[^\\n\\r]");
      }
      case '?', '*', '+', '{', '}', ']' -> throw error("a character, a class or a group before " + c);
      default -> literal();
    }
  }

  private void literal() {
    int c = source.codePointAt(at);
    at += Character.charCount(c);
    quoted(c);
  }

  private void quoted(int c) {
    if (c < 128 && !Character.isLetterOrDigit(c)) {
      java.append('\\');
    }
    java.appendCodePoint(c);
  }

  private void quantifier() {
    if (!more()) {
      return;
    }
    switch (peek()) {
      case '?', '*', '+' -> java.append(source.charAt(at++));
      case '{' -> {
        int end = source.indexOf('}', at);
        String inner = end < 0 ? "" : source.substring(at + 1, end);
        if (!inner.matches("[0-9]{1,9}(,([0-9]{1,9})?)?")) {
          throw error("a quantifier such as {2}, {2,} or {2,5}");
        }
        java.append('{').append(inner).append('}');
        at = end + 1;
      }
      default -> {
        // None: the atom once.
      }
    }
    if (more() && "?*+{".indexOf(peek()) >= 0 && "?*+}".indexOf(source.charAt(at - 1)) >= 0 && isQuantifierBehind()) {
      throw error("one quantifier only");
    }
  }

  private boolean isQuantifierBehind() {
    char last = java.charAt(java.length() - 1);
    return (last == '?' || last == '*' || last == '+' || last == '}') && java.charAt(java.length() - 2) != '\\';
  }

  private void escape(boolean inClass) {
    at++;
    char c = peek();
    at++;
    switch (c) {
      case 'n', 'r', 't' -> java.append('\\').append(c);
      case '\\', '|', '.', '?', '*', '+', '(', ')', '{', '}', '-', '[', ']', '^' -> java.append('\\').append(c);
      case 's' -> java.append("[ \\t\\n\\r]");
      case 'S' -> java.append("[^ \\t\\n\\r]");
      case 'd' -> java.append("\\p{Nd}");
      case 'D' -> java.append("\\P{Nd}");
      case 'w' -> java.append("[^\\p{P}\\p{Z}\\p{C}]");
      case 'W' -> java.append("[\\p{P}\\p{Z}\\p{C}]");
      case 'i' -> java.append('[').append(NAME_START).append(']');
      case 'I' -> java.append("[^").append(NAME_START).append(']');
      case 'c' -> java.append('[').append(NAME).append(']');
      case 'C' -> java.append("[^").append(NAME).append(']');
      case 'p', 'P' -> property(c);
      default -> {
        at--;
        throw error((inClass ? "an escape of a class" : "an escape") + " of XML Schema behind the backslash");
      }
    }
  }

  /** A category such as {@code \p{Lu}}, or a block such as {@code \p{IsBasicLatin}}. */
  private void property(char kind) {
    int end = source.indexOf('}', at);
    if (end < 0 || peek() != '{') {
      throw error("a category in braces");
    }
    String name = source.substring(at + 1, end);
    String translated = name.startsWith("Is") ? "In" + name.substring(2) : name;
    if (!name.startsWith("Is") && !name.matches("L[ultmo]?|M[nce]?|N[dlo]?|P[cdseifo]?|Z[slp]?|S[mcko]?|C[cfon]?")) {
      throw error("a category of Unicode");
    }
    try {
      Pattern.compile("\\p{" + translated + "}");
    } catch (PatternSyntaxException e) {
      throw error("a block of Unicode");
    }
    java.append('\\').append(kind).append('{').append(translated).append('}');
    at = end + 1;
  }

  /** {@code [abc]}, {@code [^a-z]}, {@code [a-z-[aeiou]]}: what is not to match is looked for ahead of the one character that is taken. */
  private void characterClass() {
    int from = java.length();
    at++;
    boolean negated = peek() == '^';
    at += negated ? 1 : 0;
    java.append('[');
    String subtracted = "";
    boolean empty = true;
    while (peek() != ']') {
      if (!empty && source.startsWith("-[", at)) {
        subtracted = subtracted();
        break;
      }
      range(empty);
      empty = false;
    }
    if (empty) {
      throw error("a character in the class");
    }
    at++;
    java.append(']');
    if (negated) {
      java.insert(from, "(?!").append(")(?s:.)");
    }
    java.insert(from, "(?:" + subtracted).append(')');
  }

  private String subtracted() {
    at++;
    int from = java.length();
    characterClass();
    String inner = java.substring(from);
    java.setLength(from);
    if (peek() != ']') {
      throw error("the end of the class behind what is subtracted");
    }
    return "(?!" + inner + ")";
  }

  private void range(boolean first) {
    int start = at;
    int low = member(first);
    if (low >= 0 && more() && peek() == '-' && at + 1 < source.length() && source.charAt(at + 1) != ']' && source.charAt(at + 1) != '[') {
      at++;
      java.append('-');
      int high = member(false);
      if (high < low) {
        at = start;
        throw error("a range from lower to higher");
      }
    }
  }

  /** One character of a class, or a class escape. @return the character, or -1 for a whole class */
  private int member(boolean first) {
    char c = peek();
    if (c == '[') {
      throw error("an escaped bracket inside the class");
    }
    if (c == '\\') {
      int from = java.length();
      char escaped = at + 1 < source.length() ? source.charAt(at + 1) : ' ';
      escape(true);
      return switch (escaped) {
        case 'n' -> '\n';
        case 'r' -> '\r';
        case 't' -> '\t';
        default -> java.length() - from == 2 ? escaped : -1;
      };
    }
    if (c == '-' && !first && at + 1 < source.length() && source.charAt(at + 1) != ']') {
      throw error("a hyphen first or last in the class, or escaped");
    }
    int point = source.codePointAt(at);
    at += Character.charCount(point);
    quoted(point);
    return point;
  }
}
