package org.seamledger.ledger;

/** What a caller asked of the ledger cannot be done; the message is one line for people. */
public final class LedgerException extends RuntimeException {

  private static final long serialVersionUID = 1;

  /** Why. */
  public enum Reason {
    /** There is no such thing. */
    NOT_FOUND,
    /** Somebody else changed it since it was read, or its state forbids it. */
    CONFLICT,
    /** The values given make no sense. */
    INVALID,
    /** The storage cannot be used. */
    STORAGE,
    /** The database cannot be reached now, or another server has taken it; later it may answer again. */
    UNREACHABLE
  }

  private final Reason reason;

  public LedgerException(Reason reason, String message) {
    super(message);
    this.reason = reason;
  }

  public LedgerException(Reason reason, String message, Throwable cause) {
    super(message, cause);
    this.reason = reason;
  }

  public Reason reason() {
    return reason;
  }
}
