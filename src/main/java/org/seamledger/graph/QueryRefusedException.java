package org.seamledger.graph;

/** A query that is none, that may not be asked, or that took too much. The message is for people. */
public final class QueryRefusedException extends RuntimeException {

  private static final long serialVersionUID = 1;

  /** Whether it is the query that is wrong, or it took more than it may. */
  public enum Reason {
    WRONG, TOO_MUCH
  }

  private final Reason reason;

  QueryRefusedException(Reason reason, String message) {
    super(message);
    this.reason = reason;
  }

  public Reason reason() {
    return reason;
  }
}
