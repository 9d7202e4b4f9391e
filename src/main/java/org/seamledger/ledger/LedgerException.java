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
    /** There is no room left for it. */
    FULL,
    /** The database takes no changes. */
    READ_ONLY,
    /** Another server uses it; once that one ends it may be had. */
    IN_USE,
    /** The database cannot be reached now; later it may answer again. */
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

  /** Whether the same may succeed later without anybody changing it. */
  public boolean isTemporary() {
    return reason == Reason.UNREACHABLE || reason == Reason.IN_USE;
  }
}
