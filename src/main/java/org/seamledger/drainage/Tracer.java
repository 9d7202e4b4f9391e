package org.seamledger.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.seamledger.drainage.Landings.Stretch;
import org.seamledger.drainage.Node.Exit;
import org.seamledger.drainage.Node.Landing;
import org.seamledger.drainage.Node.Target;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.roof.BoundaryEdge;
import org.seamledger.roof.Contact;
import org.seamledger.roof.Roof;

/** Says of every piece of the roof where its water goes, and lets it run. */
final class Tracer {

  private final RoofWater water;
  private final Set<String> caught;
  private final Landings landings;
  private final Release release;

  private Tracer(Roof roof, List<Junction> junctions, Set<String> caught) {
    this.water = new RoofWater(roof, junctions);
    this.caught = caught;
    this.landings = new Landings(water);
    this.release = new Release(water, caught);
  }

  static DrainageTrace trace(Roof roof, List<Junction> junctions, Set<String> caught) {
    Tracer tracer = new Tracer(roof, junctions, caught);
    List<Node> nodes = tracer.connected();
    Bookings bookings = new Bookings();
    new NodeOrder(nodes).run(bookings);
    return new DrainageTrace(bookings, Catchments.of(tracer.water));
  }

  private List<Node> connected() {
    LevelLines levels = new LevelLines(water, release);
    levels.connect();
    List<Node> nodes = new ArrayList<>();
    for (FacetCells facet : water.facets) {
      if (facet.pool != null) {
        pool(facet);
        nodes.add(facet.pool);
      }
      facet.slabs.forEach(slab -> slab.forEach(cell -> {
        cell(facet, cell);
        nodes.add(cell.node());
      }));
    }
    for (int e = 0; e < water.lines.size(); e++) {
      if (water.lines.get(e) != null) {
        if (!water.isLevel(e)) {
          sloping(e, levels);
        }
        nodes.add(water.lines.get(e));
      }
    }
    return nodes;
  }

  private void sloping(int e, LevelLines levels) {
    Vec3 d = water.lowEnd(e).minus(water.highEnd(e));
    Vec3 direction = d.planLength() < 1e-9 ? Vec3.ZERO : new Vec3(d.x(), d.y(), 0).times(1 / d.planLength());
    Landing landing = release.downFrom(new Release.End(e, water.lowEnd(e), direction));
    landing = landing != null ? landing : levels.at(water.lowEnd(e), e);
    if (landing != null) {
      water.lines.get(e).exits.add(new Exit(water.lines.get(e).to, landing.target(), landing.at(), landing.at()));
    }
  }

  private void cell(FacetCells facet, Cell cell) {
    BoundaryEdge edge = water.edge(cell.low());
    Node node = cell.node();
    Stretch low = new Stretch(facet.plane.at(node.from, cell.lowAtFrom()), facet.plane.at(node.to, cell.lowAtTo()), node.from, node.to);
    Contact c = edge.contact();
    if (c instanceof Contact.Free) {
      String junction = water.junctionOfEdge.get(cell.low());
      node.exits.addAll(landings.over(junction, low, caught.contains(junction)));
    } else if (water.isOutlet(cell.low())) {
      node.exits.add(new Exit(node.to, Target.leaving(water.junctionOfEdge.get(cell.low())), 0, 0));
    } else if (water.lines.get(cell.low()) != null) {
      Vec2 a = facet.inPlane(edge.from());
      Vec2 b = facet.inPlane(edge.to());
      double scale = edge.lengthM() / (b.u() - a.u());
      node.exits.add(new Exit(node.to, Target.to(water.lines.get(cell.low())), (node.from - a.u()) * scale, (node.to - a.u()) * scale));
    } else if (c instanceof Contact.OtherFacet other) {
      node.exits.addAll(landings.on(water.facets.get(other.facet()), low, UnaryOperator.identity()));
    }
  }

  /** Water of a level facet leaves where the roof falls away from it or an outlet stands in it, in proportion to the lengths. */
  private void pool(FacetCells facet) {
    List<Integer> ways = water.edgesOf(facet.facet).stream().filter(e -> water.isOutlet(e)
        || water.edge(e).contact() instanceof Contact.OtherFacet o && water.falls(e, o.facet())).toList();
    double all = ways.stream().mapToDouble(e -> water.edge(e).lengthM()).sum();
    double from = 0;
    for (int i = 0; i < ways.size(); i++) {
      BoundaryEdge edge = water.edge(ways.get(i));
      double to = i == ways.size() - 1 ? 1 : from + edge.lengthM() / all;
      if (edge.contact() instanceof Contact.OtherFacet o) {
        facet.pool.exits.addAll(landings.on(water.facets.get(o.facet()), new Stretch(edge.from(), edge.to(), from, to),
            UnaryOperator.identity()));
      } else {
        facet.pool.exits.add(new Exit(to, Target.leaving(water.junctionOfEdge.get(ways.get(i))), 0, 0));
      }
      from = to;
    }
  }
}
