package org.seamledger.ledger;

import java.time.Instant;
import java.time.InstantSource;
import java.util.function.LongSupplier;

/**
 * The time by which files are old enough to go: the earlier of what the wall clock says and what it said when this was made, plus the time
 * since. Where somebody sets the clock ahead, what was written a moment ago is not old by it.
 */
final class CautiousClock {

  private final InstantSource wall;
  private final LongSupplier nanos;
  private final Instant begun;
  private final long begunAt;

  CautiousClock() {
    this(InstantSource.system(), System::nanoTime);
  }

  /** @param nanos a clock that never jumps */
  CautiousClock(InstantSource wall, LongSupplier nanos) {
    this.wall = wall;
    this.nanos = nanos;
    this.begun = wall.instant();
    this.begunAt = nanos.getAsLong();
  }

  Instant now() {
    Instant steady = begun.plusNanos(nanos.getAsLong() - begunAt);
    Instant said = wall.instant();
    return said.isBefore(steady) ? said : steady;
  }
}
