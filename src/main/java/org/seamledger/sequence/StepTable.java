package org.seamledger.sequence;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;
import org.seamledger.quantity.layout.Panel;

/** Steps while they are found and put in order: by place, then by work. */
final class StepTable {

  private static final SortedMap<Work, Draft> NONE = Collections.unmodifiableSortedMap(new TreeMap<>());

  private final Map<String, SortedMap<Work, Draft>> byPlace = new HashMap<>();

  /** A step to be. */
  static final class Draft {
    final String place;
    final Work work;
    private final String id;
    final SortedSet<String> after = new TreeSet<>();
    final List<MetalLine> metal = new ArrayList<>();
    final List<SealLine> seals = new ArrayList<>();
    final List<FastenerRow> fasteners = new ArrayList<>();
    final List<Panel> panels = new ArrayList<>();
    double amount;

    private Draft(String place, Work work) {
      this.place = place;
      this.work = work;
      this.id = place + "/" + work.id();
    }

    String id() {
      return id;
    }
  }

  /** The step of a work at a place; it is there from now on. */
  Draft at(String place, Work work) {
    return byPlace.computeIfAbsent(place, p -> new TreeMap<>()).computeIfAbsent(work, w -> new Draft(place, w));
  }

  /** The first of some works that there is at a place, or else the first of them; null where there are none. */
  Draft atFirst(String place, List<Work> works) {
    SortedMap<Work, Draft> there = byPlace.getOrDefault(place, NONE);
    return works.stream().filter(there::containsKey).findFirst().or(() -> works.stream().findFirst()).map(w -> at(place, w)).orElse(null);
  }

  Collection<Draft> at(String place) {
    return byPlace.getOrDefault(place, NONE).values();
  }

  /** The steps of a place whose work has this name. */
  List<Draft> named(String place, String work) {
    return at(place).stream().filter(d -> d.work.id().equals(work)).toList();
  }

  List<Draft> all() {
    return byPlace.keySet().stream().sorted().flatMap(place -> at(place).stream()).toList();
  }
}
