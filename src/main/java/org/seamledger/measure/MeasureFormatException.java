package org.seamledger.measure;

/** A text is not the measure that was asked for: what was expected, what was found, and where. */
public final class MeasureFormatException extends IllegalArgumentException {

  private static final long serialVersionUID = 1;

  private final String expected;
  private final String found;
  private final int position;

  /** @param position from 1, in characters of the text */
  public MeasureFormatException(String expected, String found, int position) {
    super("expected " + expected + ", found " + found + (position > 0 ? " at position " + position : ""));
    this.expected = expected;
    this.found = found;
    this.position = position;
  }

  public String expected() {
    return expected;
  }

  public String found() {
    return found;
  }

  public int position() {
    return position;
  }
}
