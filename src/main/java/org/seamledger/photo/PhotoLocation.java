package org.seamledger.photo;

import java.util.Locale;

/** A place on the earth, degrees of WGS 84; north and east are positive. */
public record PhotoLocation(double latitude, double longitude) {

  /** To the sixth decimal, a tenth of a metre. */
  public String words() {
    return String.format(Locale.ROOT, "%.6f,%.6f", latitude, longitude);
  }
}
