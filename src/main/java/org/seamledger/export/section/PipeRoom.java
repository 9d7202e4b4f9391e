package org.seamledger.export.section;

import java.util.List;
import java.util.OptionalDouble;
import org.seamledger.detail.FixedLine;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.FixedPanel;
import org.seamledger.quantity.PanelEnd;
import org.seamledger.takeoff.Takeoff;

/**
 * How far the panel beneath a round penetration moves past it: what its free end moves, by the share that the distance from the fixed line
 * is of the panel (free expansion is linear in the distance from where it is held).
 */
final class PipeRoom {

  private PipeRoom() {
  }

  /** The greater way of the panels that the pipe's middle lies on, metres; empty where no panel there has a fixed line. */
  static OptionalDouble of(Takeoff takeoff, Junction pipe) {
    Vec3 middle = pipe.path().stream().reduce(Vec3.ZERO, Vec3::plus).times(1.0 / Math.max(1, pipe.path().size()));
    return pipe.faces().stream().flatMap(f -> takeoff.quantities().fixity().of(f).stream()).filter(p -> p.fixed() != FixedLine.NONE)
        .filter(p -> p.middle(false) != null && p.middle(true) != null && isOn(p, middle)).mapToDouble(p -> moved(p, middle)).max();
  }

  private static boolean isOn(FixedPanel panel, Vec3 middle) {
    Vec3 foot = foot(panel, middle);
    return foot.distance(middle) <= panel.panel().widthM() / 2 + 0.01;
  }

  /** The nearest place on the panel's middle line. */
  private static Vec3 foot(FixedPanel panel, Vec3 at) {
    Vec3 low = panel.middle(false);
    Vec3 up = panel.middle(true).minus(low);
    double share = up.length() < 1e-9 ? 0 : Math.max(0, Math.min(1, at.minus(low).dot(up) / up.dot(up)));
    return low.plus(up.times(share));
  }

  private static double moved(FixedPanel panel, Vec3 at) {
    Vec3 low = panel.middle(false);
    Vec3 high = panel.middle(true);
    Vec3 held = switch (panel.fixed()) {
      case LOW_END -> low;
      case HIGH_END -> high;
      default -> low.towards(high, 0.5);
    };
    double free = Math.max(held.distance(low), held.distance(high));
    double most = List.of(panel.low(), panel.high()).stream().mapToDouble(PipeRoom::oneWay).max().orElse(0);
    return free < 1e-9 ? 0 : most * foot(panel, at).distance(held) / free;
  }

  private static double oneWay(PanelEnd end) {
    return Math.max(end.growM(), end.shrinkM());
  }
}
