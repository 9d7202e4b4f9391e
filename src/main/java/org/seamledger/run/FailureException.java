package org.seamledger.run;

/** A failure on its way to whoever puts it into words. */
public final class FailureException extends RuntimeException {

  private static final long serialVersionUID = 1;

  private final transient Failure failure;

  public FailureException(Failure failure) {
    super(failure.text(), failure.cause().orElse(null));
    this.failure = failure;
  }

  public Failure failure() {
    return failure;
  }
}
