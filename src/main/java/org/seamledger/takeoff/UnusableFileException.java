package org.seamledger.takeoff;

/** A file of rules or settings can't be used. The message is one line for people: file, place, what is wrong. */
public final class UnusableFileException extends RuntimeException {

  private static final long serialVersionUID = 1;

  public UnusableFileException(RuntimeException cause) {
    super(cause.getMessage(), cause);
  }
}
