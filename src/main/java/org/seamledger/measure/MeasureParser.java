package org.seamledger.measure;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * Reads one measure:
 *
 * <pre>
 * measure  = term { term }                 feet and inches: "10 ft 3 in"; later terms are smaller and not negative
 *          | number ":" number             slope as rise and run: "3:12"
 * term     = number unit
 * number   = [sign] ( decimal | whole | whole/whole | whole (" " | "-") whole/whole )
 * </pre>
 */
final class MeasureParser {

  /** Longer texts are no measure, and would only cost time. */
  private static final int LONGEST = 80;
  private static final String VULGAR = "½¼¾⅛⅜⅝⅞⅓⅔";
  private static final List<String> VULGAR_AS = List.of("1/2", "1/4", "3/4", "1/8", "3/8", "5/8", "7/8", "1/3", "2/3");

  private final Dimension dimension;
  private final String text;
  private int at;
  private Unit last;

  MeasureParser(Dimension dimension, String text) {
    this.dimension = dimension;
    this.text = text == null ? "" : text;
  }

  Measure parse() {
    skipSpace();
    if (at == text.length()) {
      throw fail("nothing", at);
    }
    if (text.length() > LONGEST) {
      throw new MeasureFormatException(expected(), "a text of " + text.length() + " characters", 0);
    }
    int start = at;
    Fraction first = number();
    Fraction si = peek() == ':' ? ratio(first) : terms(first);
    skipSpace();
    if (at < text.length()) {
      throw fail("\"" + rest(at) + "\"", at);
    }
    if (si.signum() < 0 && dimension != Dimension.TEMPERATURE_DIFFERENCE && dimension != Dimension.ANGLE) {
      throw fail(dimension == Dimension.TEMPERATURE ? "a reading below absolute zero" : "a negative value", start);
    }
    return new Measure(dimension, si, text.strip());
  }

  private Fraction ratio(Fraction rise) {
    int colon = at++;
    if (dimension != Dimension.SLOPE) {
      throw fail("\":\"", colon);
    }
    skipSpace();
    int place = at;
    Fraction run = number();
    if (run.signum() <= 0) {
      throw fail("a run of " + run, place);
    }
    return rise.over(run);
  }

  private Fraction terms(Fraction first) {
    boolean negative = first.signum() < 0;
    Fraction si = term(first, null);
    skipSpace();
    // Only lengths are written in two units: "10 ft 3 in".
    while (dimension == Dimension.LENGTH && at < text.length()) {
      if (peek() == '-') { // 9'-6"
        at++;
      }
      int place = at;
      if (!Character.isDigit(peek()) && VULGAR.indexOf(peek()) < 0) {
        throw fail("\"" + rest(at) + "\"", place);
      }
      Fraction more = term(number(), last);
      si = negative ? si.minus(more) : si.plus(more);
      skipSpace();
    }
    return si;
  }

  private Fraction term(Fraction number, Unit before) {
    skipSpace();
    int place = at;
    String sign = unitSign();
    if (dimension == Dimension.SLOPE && Unit.find(Dimension.ANGLE, sign).isPresent()) {
      return tangent(number, place);
    }
    Optional<Unit> unit = sign.isEmpty() ? Optional.empty() : Unit.find(dimension, sign);
    if (unit.isEmpty() || unit.get() == Unit.RISE_PER_RUN) {
      throw fail(sign.isEmpty() ? "no unit" : "the unit \"" + sign + "\"", place);
    }
    if (before != null && unit.get().toSi(1.0) >= before.toSi(1.0)) {
      throw fail("\"" + sign + "\" after \"" + before.symbol() + "\"", place);
    }
    last = unit.get();
    return last.toSi(number);
  }

  private Fraction tangent(Fraction degrees, int place) {
    double d = degrees.toDouble();
    if (d < 0 || d >= 90) {
      throw fail("an angle of " + degrees.toDouble() + " degrees", place);
    }
    return Fraction.ofDecimal(new BigDecimal(Math.tan(Math.toRadians(d))).toPlainString());
  }

  private String unitSign() {
    int start = at;
    if (at < text.length() && "'′\"″".indexOf(text.charAt(at)) >= 0) {
      at++;
      return text.substring(start, at);
    }
    while (at < text.length() && isSign(text.charAt(at))) {
      at++;
    }
    // "fl oz", "sq ft", "deg F": a sign of two words.
    String word = text.substring(start, at);
    if (word.matches("(?i)fl\\.?|sq|deg")) {
      int save = at;
      skipSpace();
      int second = at;
      while (at < text.length() && isSign(text.charAt(at))) {
        at++;
      }
      if (at > second && Unit.find(dimension, word + " " + text.substring(second, at)).isPresent()) {
        return word + " " + text.substring(second, at);
      }
      at = save;
    }
    return word;
  }

  /** Digits belong to signs such as "m2", but not in "10ft3in". */
  private boolean isSign(char c) {
    return Character.isLetter(c) || "%°/²³.".indexOf(c) >= 0 || dimension != Dimension.LENGTH && (c == '2' || c == '3');
  }

  private Fraction number() {
    boolean negative = false;
    if (peek() == '-' || peek() == '−' || peek() == '+') {
      negative = peek() != '+';
      at++;
    }
    Fraction value = unsigned();
    return negative ? value.negated() : value;
  }

  private Fraction unsigned() {
    if (VULGAR.indexOf(peek()) >= 0 && at < text.length()) {
      return vulgar();
    }
    int place = at;
    String whole = digits();
    if (whole.isEmpty() && peek() != '.') {
      throw fail(at == text.length() ? "the end of the text" : "\"" + rest(at) + "\"", place);
    }
    if (peek() == '.') {
      at++;
      String decimals = digits();
      if (whole.isEmpty() && decimals.isEmpty()) {
        throw fail("\".\"", place);
      }
      return Fraction.ofDecimal((whole.isEmpty() ? "0" : whole) + (decimals.isEmpty() ? "" : "." + decimals));
    }
    if (peek() == '/') {
      return over(Fraction.ofDecimal(whole));
    }
    if (at < text.length() && VULGAR.indexOf(peek()) >= 0) {
      return Fraction.ofDecimal(whole).plus(vulgar());
    }
    return Fraction.ofDecimal(whole).plus(mixedPart());
  }

  /** The fraction in "1 1/2" or "1-1/2"; zero, and nothing read, where there is none. */
  private Fraction mixedPart() {
    int save = at;
    if (peek() == '-') {
      at++;
    } else {
      skipSpace();
    }
    if (at > save) {
      String upper = digits();
      if (!upper.isEmpty() && peek() == '/') {
        return over(Fraction.ofDecimal(upper));
      }
    }
    at = save;
    return Fraction.ZERO;
  }

  private Fraction over(Fraction upper) {
    int place = ++at;
    String lower = digits();
    if (lower.isEmpty() || lower.chars().allMatch(c -> c == '0')) {
      throw fail(lower.isEmpty() ? "no denominator" : "a denominator of zero", place);
    }
    return upper.over(Fraction.ofDecimal(lower));
  }

  private Fraction vulgar() {
    String[] parts = VULGAR_AS.get(VULGAR.indexOf(text.charAt(at++))).split("/");
    return Fraction.of(Long.parseLong(parts[0]), Long.parseLong(parts[1]));
  }

  private String digits() {
    int start = at;
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    return text.substring(start, at);
  }

  private char peek() {
    return at < text.length() ? text.charAt(at) : 0;
  }

  private void skipSpace() {
    while (at < text.length() && (Character.isWhitespace(text.charAt(at)) || Character.isSpaceChar(text.charAt(at)))) {
      at++;
    }
  }

  private String rest(int from) {
    String rest = text.substring(from);
    return rest.length() <= 20 ? rest : rest.substring(0, 20) + "…";
  }

  private String expected() {
    List<String> signs = dimension == Dimension.SLOPE ? List.of(":12", "%", "deg") : Unit.signs(dimension);
    return dimension.noun() + " such as \"" + dimension.example() + "\" (units: " + String.join(", ", signs) + ")";
  }

  private MeasureFormatException fail(String found, int place) {
    return new MeasureFormatException(expected(), found, place + 1);
  }
}
