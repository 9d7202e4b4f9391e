package org.seamledger.quantity;

import java.util.List;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;

/** Eaves by where they end. */
final class LineEnds {

  /** Ends of lines this close meet, metres. */
  private static final double MEETS = 0.05;

  private record Tip(Junction line, Vec3 at) {
  }

  private final PlanIndex<Tip> eaves;

  LineEnds(List<DetailedJunction> junctions) {
    List<Tip> tips = junctions.stream().filter(j -> j.junction().type().water() == Kind.Water.OVER).map(j -> j.junction().junction())
        .flatMap(j -> List.of(new Tip(j, j.path().get(0)), new Tip(j, j.path().get(j.path().size() - 1))).stream()).toList();
    this.eaves = new PlanIndex<>(tips, t -> Box3.of(List.of(t.at())));
  }

  /** True where an eave of the same face ends at the low end of a wall's line; false for a level line. */
  boolean eaveAtLowEnd(Junction wall) {
    Vec3 first = wall.path().get(0);
    Vec3 last = wall.path().get(wall.path().size() - 1);
    if (Math.abs(first.z() - last.z()) < MEETS) {
      return false;
    }
    Vec3 low = first.z() < last.z() ? first : last;
    return eaves.overlapping(Box3.of(List.of(low)).grown(MEETS)).stream()
        .anyMatch(t -> t.at().distance(low) < MEETS && t.line().faces().stream().anyMatch(wall.faces()::contains));
  }
}
