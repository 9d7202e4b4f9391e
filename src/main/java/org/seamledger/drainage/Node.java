package org.seamledger.drainage;

import java.util.ArrayList;
import java.util.List;

/** A piece of the roof that water comes to and goes on from: a cell of a facet, a line along which it runs, a level facet. */
final class Node {

  /** Where it is. */
  final WaterPlace place;
  /** Face in which water stays that can't go on. */
  final String face;
  /** Begin and end of its coordinate. */
  final double from;
  final double to;
  final Profile water = new Profile();
  /** By ascending coordinate, from begin to end; none: the water stays. */
  final List<Exit> exits = new ArrayList<>();

  Node(WaterPlace place, String face, double from, double to) {
    this.place = place;
    this.face = face;
    this.from = from;
    this.to = to;
  }

  /**
   * Where water of a stretch goes.
   *
   * @param to end of the stretch, in the node's coordinate; it begins where the one before ends
   * @param target what takes it
   * @param targetFrom where the begin of the stretch comes in the target's coordinate
   * @param targetTo where its end comes
   */
  record Exit(double to, Target target, double targetFrom, double targetTo) {
  }

  /**
   * What takes water.
   *
   * @param next a node, or null where it leaves the roof or stays
   * @param leavesAt junction over which it leaves the roof, empty where it doesn't
   * @param over junction that it drops from on the way, empty where it drops from none
   * @param drops whether it falls through the air
   */
  record Target(Node next, String leavesAt, String over, boolean drops) {
    static final Target TRAP = new Target(null, "", "", false);

    static Target to(Node next) {
      return new Target(next, "", "", false);
    }

    static Target leaving(String junction) {
      return new Target(null, junction, "", false);
    }

    Target from(String junction) {
      return new Target(next, leavesAt, junction, true);
    }
  }

  /** A target and the place in it, in its coordinate. */
  record Landing(Target target, double at) {
  }
}
