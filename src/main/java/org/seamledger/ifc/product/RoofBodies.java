package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.seamledger.geometry.Solid;
import org.seamledger.progress.Progress;
import org.seamledger.progress.SharedWork;

/** The bodies of roof elements, read on several threads. */
public final class RoofBodies {

  private RoofBodies() {
  }

  /** By instance; no entry where an element has none. */
  public static Map<Long, List<Solid>> of(Scope scope, Set<Long> roofs, Progress progress) {
    long[] ids = roofs.stream().mapToLong(id -> id).toArray();
    Map<Long, List<Solid>> bodies = new TreeMap<>();
    SharedWork.each(Ids.of(List.of("roof"), type -> ids), progress, scope::fork, RoofBodies::found, found -> {
      for (int i = 0; i < found.bodies().size(); i++) {
        if (!found.bodies().get(i).isEmpty()) {
          bodies.put(found.ids().ids()[found.ids().from() + i], found.bodies().get(i));
        }
      }
      scope.model().mentionAll(found.mentioned());
    });
    return bodies;
  }

  /** What a thread found in a stretch of instances: a list for each. */
  private record Found(Ids<String> ids, List<List<Solid>> bodies, Map<String, Long> mentioned) {
  }

  private static Found found(Scope own, Ids<String> some, Progress progress) {
    List<List<Solid>> bodies = new ArrayList<>();
    for (int i = some.from(); i < some.to(); i++) {
      progress.at((i - some.from()) / (double) (some.to() - some.from()));
      bodies.add(own.shapes().body(own.model().get(some.ids()[i])));
    }
    return new Found(some, bodies, own.model().takeMentioned());
  }
}
