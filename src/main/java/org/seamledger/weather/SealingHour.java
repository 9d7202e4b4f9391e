package org.seamledger.weather;

import java.util.Collections;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What may be sealed in an hour.
 *
 * @param dewPointC NaN where it isn't known; so with the metal
 * @param metalC temperature of the metal, °C
 * @param against why not, by class; an empty set where it may
 * @param skinHours after which a bead that is gunned now has a skin; NaN where it forms none, infinite where not within the weather known
 * @param capHours after which one that stands upright may be looked at and covered; likewise infinite
 */
public record SealingHour(WeatherHour weather, double dewPointC, double metalC, Map<SealantClass, Set<Hindrance>> against,
    double skinHours, double capHours) {

  public SealingHour {
    Map<SealantClass, Set<Hindrance>> copy = new TreeMap<>();
    against.forEach((k, v) -> copy.put(k, Collections.unmodifiableSet(v)));
    against = Collections.unmodifiableMap(copy);
  }

  /** Whether a class may be applied. */
  public boolean isOpen(SealantClass sealant) {
    return against.get(sealant).isEmpty();
  }
}
