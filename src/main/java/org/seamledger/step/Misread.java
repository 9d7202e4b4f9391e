package org.seamledger.step;

/** The bytes at an offset are not what the grammar requires. Becomes an UnreadableModelException where file and line are known. */
final class Misread extends RuntimeException {

  private static final long serialVersionUID = 1;
  /** What was found where the bytes ran out. */
  static final String END = "the end of the file";

  final long offset;
  final String expected;
  final String found;

  Misread(long offset, String expected, String found) {
    super(expected, null, false, false);
    this.offset = offset;
    this.expected = expected;
    this.found = found;
  }
}
