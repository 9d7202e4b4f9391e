package org.seamledger.export.bcf;

import java.time.Instant;
import java.util.Optional;
import org.seamledger.bcf.BcfDate;
import org.seamledger.bcf.BcfVersion;
import org.seamledger.takeoff.Takeoff;

/**
 * How findings are handed on.
 *
 * @param author whose topics they are, never blank
 * @param created when they count as made; when the first model was written where it isn't said
 */
public record BcfOptions(BcfVersion version, String author, Optional<Instant> created) {

  /** A model that doesn't say when it was written: no clock is asked, so that the same model gives the same bytes. */
  private static final Instant UNKNOWN = Instant.EPOCH;

  Instant createdOf(Takeoff takeoff) {
    return created.orElseGet(() -> BcfDate.instant(takeoff.models().isEmpty() ? "" : takeoff.models().get(0).date()).orElse(UNKNOWN));
  }
}
