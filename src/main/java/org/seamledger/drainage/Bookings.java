package org.seamledger.drainage;

import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.drainage.Node.Target;

/** Sums of what went where, square metres of plan. */
final class Bookings {

  final SortedMap<WaterPlace, SortedMap<WaterPlace, Double>> path = new TreeMap<>();
  final SortedMap<String, Double> leaves = new TreeMap<>();
  final SortedMap<String, Double> trapped = new TreeMap<>();
  /** Of that, what stays at a junction. */
  final SortedMap<String, Double> held = new TreeMap<>();
  /** What drops from a junction on a face. */
  final SortedMap<String, SortedMap<String, Double>> drops = new TreeMap<>();

  void book(Node from, Target target, double amount) {
    if (target.next() == null && target.leavesAt().isEmpty()) {
      stays(from, amount);
      return;
    }
    WaterPlace to = target.next() == null ? WaterPlace.junction(target.leavesAt()) : target.next().place;
    if (!to.equals(from.place)) {
      path.computeIfAbsent(from.place, p -> new TreeMap<>()).merge(to, amount, Double::sum);
    }
    if (target.next() == null) {
      leaves.merge(target.leavesAt(), amount, Double::sum);
    }
    if (target.drops()) {
      drops.computeIfAbsent(target.over(), j -> new TreeMap<>()).merge(to.id(), amount, Double::sum);
    }
  }

  void stays(Node where, double amount) {
    if (!where.place.isFace()) {
      held.merge(where.place.id(), amount, Double::sum);
    }
    trapped.merge(where.face, amount, Double::sum);
  }
}
