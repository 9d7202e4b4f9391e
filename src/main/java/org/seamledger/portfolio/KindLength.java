package org.seamledger.portfolio;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.KindedJunction;
import org.seamledger.quantity.formula.Order;
import org.seamledger.takeoff.Takeoff;

/**
 * The lines of one kind.
 *
 * @param place of the kind in lists
 * @param nanometres their length, added exactly
 * @param models that have such lines
 */
public record KindLength(String kind, int place, long lines, BigInteger nanometres, long models) {

  /** Those of one model, in the order in which kinds are listed. */
  static List<KindLength> of(Takeoff takeoff) {
    Map<String, KindLength> sums = new LinkedHashMap<>();
    for (KindedJunction j : takeoff.lines().stream().map(DetailedJunction::junction).toList()) {
      KindLength one = new KindLength(j.kind(), j.type().order(), 1, Order.nano(j.junction().lengthM()), 1);
      sums.merge(j.kind(), one, (a, b) -> new KindLength(a.kind, a.place, a.lines + 1, a.nanometres.add(b.nanometres), 1));
    }
    return List.copyOf(sums.values());
  }

  KindLength plus(KindLength o) {
    return new KindLength(kind, Math.min(place, o.place), lines + o.lines, nanometres.add(o.nanometres), models + o.models);
  }

  double lengthM() {
    return new java.math.BigDecimal(nanometres, 9).doubleValue();
  }
}
