package org.seamledger.quantity;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.seamledger.drainage.DrainageTrace;
import org.seamledger.drainage.WaterPlace;
import org.seamledger.quantity.physics.Metal;
import org.seamledger.quantity.physics.Galvanic;

/** Which metals the water of a face has run over before it comes there, from face to face and from roof to roof. */
final class WaterMetals {

  private final Map<String, Metal> stated;
  private final Metal usual;
  private final Map<String, Set<Metal>> above = new HashMap<>();

  WaterMetals(DrainageTrace trace, BelowRoof below, Metal usual) {
    this.stated = below.metals();
    this.usual = usual;
    if (!stated.isEmpty()) {
      trace.path().keySet().stream().filter(WaterPlace::isFace).forEach(face -> spread(trace, face));
    }
  }

  /** Metal of a face: as the model names it, or else the roof system's. */
  Metal of(String face) {
    return stated.getOrDefault(face, usual);
  }

  /** True where copper is above and the face is of a metal that the water of copper eats. */
  boolean copperComes(String face) {
    return Galvanic.eatenByCopper(of(face)) && above.getOrDefault(face, Set.of()).contains(Metal.COPPER);
  }

  private void spread(DrainageTrace trace, WaterPlace from) {
    Set<WaterPlace> seen = new TreeSet<>(Set.of(from));
    Deque<WaterPlace> open = new ArrayDeque<>(seen);
    Metal metal = of(from.id());
    while (metal == Metal.COPPER && !open.isEmpty()) {
      WaterPlace place = open.pop();
      if (place.isFace() && !place.equals(from)) {
        above.computeIfAbsent(place.id(), k -> new TreeSet<>()).add(metal);
      }
      trace.path().getOrDefault(place, java.util.Collections.emptySortedMap()).keySet().stream().filter(seen::add).forEach(open::push);
    }
  }
}
