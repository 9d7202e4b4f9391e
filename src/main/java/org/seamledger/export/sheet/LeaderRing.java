package org.seamledger.export.sheet;

import java.util.List;
import java.util.Optional;
import org.seamledger.geometry.Vec2;

/**
 * A number's ring and the place that its leader goes to.
 *
 * @param half of the square that the ring takes
 * @param cost how far away it is and what it crosses
 */
public record LeaderRing(Vec2 middle, Vec2 place, double half, double cost) {

  private static final double NEAREST = 7;
  private static final double FARTHEST = 150;
  /** The leader ends this far before the place, so that several may point to one. */
  private static final double SHORT = 0.4;
  private static final int TURNS = 48;

  /** The best free place of a ring whose leader may go to any of these places. */
  public static Optional<LeaderRing> find(List<Vec2> places, double half, PaperRoom room) {
    LeaderRing best = null;
    for (double away = NEAREST; away < FARTHEST; away += away < 30 ? 2 : 6) {
      for (Vec2 place : places) {
        for (int i = 0; i < TURNS; i++) {
          double turn = 2 * Math.PI * (i + 0.37) / TURNS;
          double less = best == null ? Double.MAX_VALUE : best.cost - 1e-9;
          LeaderRing ring = at(place, place.plus(new Vec2(Math.cos(turn), Math.sin(turn)).times(away)), half, less, room);
          best = ring != null ? ring : best;
        }
      }
      if (best != null && best.cost <= away) {
        break;
      }
    }
    return Optional.ofNullable(best);
  }

  /** A number's place with its cost; null where it isn't free, or costs no less than that. */
  private static LeaderRing at(Vec2 place, Vec2 middle, double half, double less, PaperRoom room) {
    LeaderRing ring = new LeaderRing(middle, place, half, place.distance(middle));
    if (ring.cost >= less) {
      return null;
    }
    List<Vec2> square = PaperRoom.square(middle, half);
    List<Vec2> leader = List.of(ring.edge(), ring.end());
    if (!room.isFree(square) || !room.isFree(leader)) {
      return null;
    }
    double cost = ring.cost + 6 * room.crossed(square);
    cost = cost >= less ? cost : cost + 2.5 * room.crossed(leader);
    return cost >= less ? null : new LeaderRing(middle, place, half, cost);
  }

  private Vec2 edge() {
    return middle.towards(place, half / middle.distance(place));
  }

  private Vec2 end() {
    return place.towards(middle, SHORT / middle.distance(place));
  }

  /** Takes its room. */
  public void close(PaperRoom room) {
    room.close(PaperRoom.square(middle, half));
    room.close(List.of(edge(), end()));
  }

  /** Draws leader, dot, ring and number. */
  public void draw(String number, String ring, String words, Svg svg) {
    svg.line("leader", edge(), end());
    svg.empty("circle", "class", "dot", "cx", Svg.number(place.u()), "cy", Svg.number(place.v()), "r", "0.5");
    svg.empty("circle", "class", ring, "cx", Svg.number(middle.u()), "cy", Svg.number(middle.v()), "r", Svg.number(half - 0.2));
    svg.turned(words, middle.plus(new Vec2(0, half * 0.39)), 0, number);
  }
}
