package org.seamledger.ids;

/**
 * A value of a model as an IDS sees it: in SI units, with the form of its type.
 *
 * @param kind how it is compared
 * @param text itself; of a number as it is shown
 * @param number of a number, else NaN
 */
public record IfcLiteral(Kind kind, String text, double number) {

  /** How a value is compared. */
  public enum Kind {
    /** Also enumerations, dates, durations. */
    TEXT,
    WHOLE, REAL,
    /** Also logical values: {@code true}, {@code false}, {@code unknown}. */
    TRUTH
  }

  public static IfcLiteral text(String text) {
    return new IfcLiteral(Kind.TEXT, text, Double.NaN);
  }

  public static IfcLiteral whole(long number) {
    return new IfcLiteral(Kind.WHOLE, Long.toString(number), number);
  }

  public static IfcLiteral real(double number) {
    String text = number == Math.rint(number) && Math.abs(number) < 1e15 ? Long.toString((long) number) : Double.toString(number);
    return new IfcLiteral(Kind.REAL, text, number);
  }

  public static IfcLiteral truth(String word) {
    return new IfcLiteral(Kind.TRUTH, word, Double.NaN);
  }

  boolean isNumber() {
    return kind == Kind.WHOLE || kind == Kind.REAL;
  }

  /** For a sentence. */
  public String shown() {
    return kind == Kind.TEXT ? "'" + text + "'" : text;
  }
}
