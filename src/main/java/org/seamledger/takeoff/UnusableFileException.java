package org.seamledger.takeoff;

/** A file of rules or settings can't be used. The message is for people, a line for each fault: file, place, what is wrong. */
public final class UnusableFileException extends RuntimeException {

  private static final long serialVersionUID = 1;

  public UnusableFileException(RuntimeException cause) {
    super(cause.getMessage(), cause);
  }
}
