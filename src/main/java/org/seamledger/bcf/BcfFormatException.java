package org.seamledger.bcf;

/** A file that is no BCF, or a broken one. The message is for people: file, entry, line and column, what was expected, what was found. */
public final class BcfFormatException extends RuntimeException {

  private static final long serialVersionUID = 1;

  BcfFormatException(String place, String expected, String found) {
    super(place + ": expected " + expected + ", found " + found);
  }
}
