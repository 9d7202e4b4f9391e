package org.seamledger.source;

import java.util.Locale;

/** A server of models that doesn't do what it was asked. The message is one line for people and holds no secret. */
public final class ModelServerException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  /** What kind of failure it was. */
  public enum Reason {
    /** Nobody answers at that address, or the connection broke. May pass. */
    UNREACHABLE,
    /** It did not answer in time. May pass. */
    TIMED_OUT,
    /** Wrong user or password, or a right is missing. */
    REFUSED,
    /** The operator's list does not say who logs in, or with which password. */
    NOT_SET_UP,
    /** No such project or revision. */
    NOT_FOUND,
    /** It answered with something that can't be used: cut short, of another schema than it says, or a fault of its own. */
    UNUSABLE
  }

  private final Reason reason;

  public ModelServerException(Reason reason, String message) {
    this(reason, message, null);
  }

  public ModelServerException(Reason reason, String message, Throwable cause) {
    super(message, cause);
    this.reason = reason;
  }

  public Reason reason() {
    return reason;
  }

  /** Short name for programs, such as {@code server/not-found}. */
  public String code() {
    return "server/" + reason.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether the same question may be answered later. */
  public boolean isPassing() {
    return reason == Reason.UNREACHABLE || reason == Reason.TIMED_OUT;
  }
}
