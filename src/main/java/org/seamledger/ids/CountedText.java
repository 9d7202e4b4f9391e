package org.seamledger.ids;

/** A text that is tired of being read: a pattern with nested repetitions could go over it for years. */
final class CountedText implements CharSequence {

  /** A pattern took too long. */
  static final class TooLongException extends RuntimeException {
    private static final long serialVersionUID = 1;

    TooLongException() {
      super("too long", null, false, false);
    }
  }

  private static final int MOST_READS = 5_000_000;

  private final String text;
  private int reads;

  CountedText(String text) {
    this.text = text;
  }

  @Override
  public char charAt(int index) {
    if (++reads > MOST_READS) {
      throw new TooLongException();
    }
    return text.charAt(index);
  }

  @Override
  public int length() {
    return text.length();
  }

  @Override
  public CharSequence subSequence(int start, int end) {
    return text.subSequence(start, end);
  }

  @Override
  public String toString() {
    return text;
  }
}
