package org.seamledger.ifc;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.seamledger.element.Element;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.site.Mark;

/**
 * Slabs that close a building at the top, but are typed as floors: walls end under them, and neither a wall, a slab nor a roof goes on
 * above. Boxes tell, so that nothing has to be built for it.
 */
final class ClosingFloors {

  /** A wall carries a slab that ends this close below its underside, or in it (metres). */
  private static final double UNDER = 0.3;
  /** Lower walls (metres) are plinths, higher things above the slab a storey. */
  private static final double STOREY = 1.8;
  /** So many walls go round a room, or stand at the ends of one. */
  private static final int WALLS = 3;
  /** Smaller slabs (square metres) are landings. */
  private static final double LEAST_M2 = 4;
  /** Share of a slab that may lie under others. */
  private static final double COVERED = 0.2;

  private final List<Mark> slabs = new ArrayList<>();
  private final List<Mark> walls = new ArrayList<>();
  private final List<Box3> covers = new ArrayList<>();

  ClosingFloors(List<Element> roofs) {
    roofs.forEach(r -> covers.add(r.bounds()));
  }

  void add(Mark mark) {
    if (mark.kind().equals("IfcSlab") || mark.kind().equals("IfcSlabStandardCase") || mark.kind().equals("IfcSlabElementedCase")) {
      slabs.add(mark);
      covers.add(mark.box());
    } else if (mark.kind().startsWith("IfcWall")) {
      walls.add(mark);
    }
  }

  Optional<Finding> finding() {
    PlanIndex<Mark> wallsNear = new PlanIndex<>(walls, Mark::box);
    PlanIndex<Box3> above = new PlanIndex<>(covers, b -> b);
    TreeSet<String> ids = new TreeSet<>();
    for (Mark slab : slabs) {
      Box3 box = slab.box();
      if (area(box) >= LEAST_M2 && !isCovered(box, above) && isOnWalls(box, wallsNear)) {
        ids.add(slab.id());
      }
    }
    return ids.isEmpty() ? Optional.empty()
        : Optional.of(Finding.of(Code.CLOSED_BY_FLOOR, ids.size() + (ids.size() == 1 ? " slab that is" : " slabs that are")
            + " not typed as roof close" + (ids.size() == 1 ? "s" : "") + " the building at the top.", List.copyOf(ids)));
  }

  private static double area(Box3 b) {
    return (b.maxX() - b.minX()) * (b.maxY() - b.minY());
  }

  private static boolean isCovered(Box3 box, PlanIndex<Box3> above) {
    double covered = 0;
    for (Box3 o : above.overlappingInPlan(box)) {
      if (o.maxZ() > box.maxZ() + UNDER) {
        covered += Math.max(0, Math.min(o.maxX(), box.maxX()) - Math.max(o.minX(), box.minX()))
            * Math.max(0, Math.min(o.maxY(), box.maxY()) - Math.max(o.minY(), box.minY()));
      }
    }
    return covered > COVERED * area(box);
  }

  private static boolean isOnWalls(Box3 box, PlanIndex<Mark> walls) {
    int carrying = 0;
    for (Mark wall : walls.overlappingInPlan(box)) {
      Box3 w = wall.box();
      if (w.maxZ() > box.maxZ() + STOREY) {
        return false;
      }
      if (w.minZ() < box.minZ() - STOREY && w.maxZ() > box.minZ() - UNDER) {
        carrying++;
      }
    }
    return carrying >= WALLS;
  }
}
