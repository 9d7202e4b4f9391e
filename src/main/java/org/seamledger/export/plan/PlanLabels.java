package org.seamledger.export.plan;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec2;

/** Places on paper that labels have taken: a label goes where none is yet, or nowhere. */
public final class PlanLabels {

  private record Dot(Vec2 at, double radius) {
  }

  private final List<Dot> taken = new ArrayList<>();

  /**
   * Takes a turned strip around a place, if it is free.
   *
   * @param degrees counter-clockwise on paper
   * @param half half the strip's length, millimetres
   * @param radius half its height
   */
  public boolean take(Vec2 at, double degrees, double half, double radius) {
    double turn = Math.toRadians(degrees);
    Vec2 along = new Vec2(Math.cos(turn), -Math.sin(turn));
    List<Dot> dots = new ArrayList<>();
    int steps = (int) Math.ceil(half / radius);
    for (int i = -steps; i <= steps; i++) {
      dots.add(new Dot(at.plus(along.times(half * i / Math.max(1, steps))), radius));
    }
    for (Dot d : dots) {
      if (taken.stream().anyMatch(t -> t.at.distance(d.at) < t.radius + d.radius)) {
        return false;
      }
    }
    taken.addAll(dots);
    return true;
  }
}
