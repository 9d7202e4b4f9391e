package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.ifc.entity.Model;
import org.seamledger.step.References;

/** Who is part of whom, and what goes through what: the relations of a model, skimmed once in bulk. Lists ascend by id. */
public final class Relations {

  private final Map<Long, List<Long>> parts = new HashMap<>();
  private final Map<Long, Long> wholes = new HashMap<>();
  private final Map<Long, List<Long>> openings = new HashMap<>();
  private final Map<Long, List<Long>> fillings = new HashMap<>();
  private final Map<Long, Long> filled = new HashMap<>();
  private final Map<Long, Long> hosts = new HashMap<>();
  private final Map<Long, Long> covered = new HashMap<>();

  Relations(Model model) {
    model.eachReferences("IFCRELAGGREGATES", (id, r) -> decomposition(r));
    model.eachReferences("IFCRELDECOMPOSES", (id, r) -> decomposition(r));
    model.eachReferences("IFCRELVOIDSELEMENT", (id, r) -> {
      link(openings, r.first(4), r.first(5));
      hosts.putIfAbsent(r.first(5), r.first(4));
    });
    model.eachReferences("IFCRELFILLSELEMENT", (id, r) -> {
      link(fillings, r.first(4), r.first(5));
      filled.putIfAbsent(r.first(5), r.first(4));
    });
    model.eachReferences("IFCRELCOVERSBLDGELEMENTS", (id, r) -> {
      for (int i = 0; i < r.size(); i++) {
        if (r.parameter(i) == 5) {
          covered.putIfAbsent(r.target(i), r.first(4));
        }
      }
    });
    for (Map<Long, List<Long>> lists : List.of(parts, openings, fillings)) {
      lists.values().forEach(l -> l.sort(null));
    }
  }

  private void decomposition(References r) {
    long whole = r.first(4);
    for (int i = 0; i < r.size(); i++) {
      if (r.parameter(i) == 5) {
        link(parts, whole, r.target(i));
        wholes.putIfAbsent(r.target(i), whole);
      }
    }
  }

  private static void link(Map<Long, List<Long>> lists, long from, long to) {
    if (from >= 0 && to >= 0) {
      lists.computeIfAbsent(from, k -> new ArrayList<>(2)).add(to);
    }
  }

  public List<Long> parts(long id) {
    return parts.getOrDefault(id, List.of());
  }

  /** The whole that an object is a part of, or -1. */
  long whole(long id) {
    return wholes.getOrDefault(id, -1L);
  }

  /** The wholes of an object from the nearest upwards; a circle ends where it closes. */
  public List<Long> ancestors(long id) {
    List<Long> up = new ArrayList<>();
    Set<Long> seen = new HashSet<>(Set.of(id));
    for (long w = whole(id); w >= 0 && seen.add(w); w = whole(w)) {
      up.add(w);
    }
    return up;
  }

  List<Long> openings(long id) {
    return openings.getOrDefault(id, List.of());
  }

  List<Long> fillings(long opening) {
    return fillings.getOrDefault(opening, List.of());
  }

  /** The opening that this element fills, or -1. */
  long openingOf(long filling) {
    return filled.getOrDefault(filling, -1L);
  }

  /** The element whose opening this one fills, or -1. */
  long hostOfFilling(long id) {
    return hosts.getOrDefault(filled.getOrDefault(id, -1L), -1L);
  }

  /** The element that a covering covers, or -1. */
  long coveredBy(long covering) {
    return covered.getOrDefault(covering, -1L);
  }
}
