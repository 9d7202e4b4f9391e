package org.seamledger.drainage;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.drainage.Node.Exit;
import org.seamledger.drainage.Node.Target;

/** Lets water run through nodes, each when all that comes to it is there. Where nodes lead round in a circle the water stays. */
final class NodeOrder {

  private static final double NOTHING = 1e-12;

  private final List<Node> order = new ArrayList<>();
  private final Map<Node, Boolean> finished = new IdentityHashMap<>();

  private static final class Visit {
    final Node node;
    int next;

    Visit(Node node) {
      this.node = node;
    }
  }

  NodeOrder(List<Node> nodes) {
    nodes.forEach(this::visit);
    Collections.reverse(order);
  }

  private void visit(Node first) {
    if (finished.containsKey(first)) {
      return;
    }
    Deque<Visit> open = new ArrayDeque<>();
    open.push(new Visit(first));
    finished.put(first, false);
    while (!open.isEmpty()) {
      Visit v = open.peek();
      if (v.next == v.node.exits.size()) {
        finished.put(v.node, true);
        order.add(v.node);
        open.pop();
        continue;
      }
      Exit exit = v.node.exits.get(v.next++);
      Node to = exit.target().next();
      if (to != null && !finished.containsKey(to)) {
        finished.put(to, false);
        open.push(new Visit(to));
      } else if (to != null && !finished.get(to)) {
        v.node.exits.set(v.next - 1, new Exit(exit.to(), Target.TRAP, 0, 0));
      }
    }
  }

  void run(Bookings bookings) {
    order.forEach(node -> pass(node, bookings));
  }

  private static void pass(Node node, Bookings bookings) {
    double total = node.water.total();
    if (Math.abs(total) < NOTHING) {
      return;
    }
    if (node.exits.isEmpty()) {
      bookings.stays(node, total);
      return;
    }
    double[] bounds = new double[node.exits.size() + 1];
    bounds[0] = node.from;
    for (int i = 0; i < node.exits.size(); i++) {
      bounds[i + 1] = node.exits.get(i).to();
    }
    List<Profile> parts = node.water.split(bounds);
    for (int i = 0; i < parts.size(); i++) {
      Exit exit = node.exits.get(i);
      double amount = parts.get(i).total();
      if (amount != 0) {
        bookings.book(node, exit.target(), amount);
        if (exit.target().next() != null) {
          parts.get(i).into(exit.target().next().water, bounds[i], bounds[i + 1], exit.targetFrom(), exit.targetTo());
        }
      }
    }
  }
}
