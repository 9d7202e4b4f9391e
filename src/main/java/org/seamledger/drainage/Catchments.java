package org.seamledger.drainage;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.drainage.Node.Exit;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Vec3;

/** The cells as areas in space, those that lie side by side between the same edges and drain to one place joined. */
final class Catchments {

  private Catchments() {
  }

  static List<Catchment> of(RoofWater water) {
    List<Catchment> all = new ArrayList<>();
    for (FacetCells facet : water.facets) {
      List<Strip> strips = new ArrayList<>();
      facet.slabs.forEach(slab -> slab.forEach(cell -> strips(cell).forEach(s -> join(strips, s))));
      strips.forEach(s -> all.add(new Catchment(facet.face, s.outline(facet.plane), s.to)));
    }
    return all;
  }

  private record Strip(Cell cell, Cell last, double from, double end, WaterPlace to) {
    List<Vec3> outline(Plane plane) {
      return List.of(plane.at(from, cell.lowAt(from)), plane.at(end, last.lowAt(end)), plane.at(end, last.highAt(end)),
          plane.at(from, cell.highAt(from)));
    }
  }

  private static List<Strip> strips(Cell cell) {
    List<Strip> strips = new ArrayList<>();
    double from = cell.node().from;
    for (Exit exit : cell.node().exits) {
      strips.add(new Strip(cell, cell, from, exit.to(), place(cell.node(), exit)));
      from = exit.to();
    }
    return strips.isEmpty() ? List.of(new Strip(cell, cell, from, cell.node().to, cell.node().place)) : strips;
  }

  private static WaterPlace place(Node node, Exit exit) {
    return exit.target().next() != null ? exit.target().next().place
        : exit.target().leavesAt().isEmpty() ? node.place : WaterPlace.junction(exit.target().leavesAt());
  }

  private static void join(List<Strip> strips, Strip s) {
    for (int i = strips.size() - 1; i >= 0 && i >= strips.size() - 8; i--) {
      Strip o = strips.get(i);
      if (Math.abs(o.end - s.from) < 1e-9 && o.last.low() == s.cell.low() && o.last.high() == s.cell.high() && o.to.equals(s.to)) {
        strips.set(i, new Strip(o.cell, s.last, o.from, s.end, s.to));
        return;
      }
    }
    strips.add(s);
  }
}
