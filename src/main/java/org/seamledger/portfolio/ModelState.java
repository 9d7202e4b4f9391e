package org.seamledger.portfolio;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;
import org.seamledger.run.Failure;

/** What became of a model. */
public enum ModelState {
  /** It has a result. */
  DONE,
  /** It can't be read; its reason names the place. */
  UNREADABLE,
  /** It took longer than a model may. */
  TOO_LONG,
  /** It needs more memory than the process has, by itself. */
  TOO_LARGE,
  /** The process ended twice while it was analysed. */
  GAVE_UP,
  /** The program failed at it. */
  FAILED;

  static ModelState of(Failure failure) {
    if (failure instanceof Failure.UnreadableModel) {
      return UNREADABLE;
    }
    return failure instanceof Failure.TooLong ? TOO_LONG : failure instanceof Failure.OutOfMemory ? TOO_LARGE : FAILED;
  }

  /** Whether another run would say the same, so that none is made. */
  boolean isFinal() {
    return this == DONE || this == UNREADABLE || this == GAVE_UP;
  }

  /** The word in tables, such as {@code too-long}. */
  @JsonValue
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
