package org.seamledger.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.roof.BoundaryEdge;
import org.seamledger.roof.Contact;
import org.seamledger.roof.Facet;
import org.seamledger.roof.Obstacle;
import org.seamledger.roof.Roof;

/** The roof as the trace sees it: facets in cells, edges with what water does at them, and both by place. */
final class RoofWater {

  /** A flat face below this slope, degrees, has no direction of its own: within survey noise of level. */
  private static final double LEVEL_FACE = 0.5;
  /** A curve's facet is as flat as this only where the curve lies level. */
  private static final double LEVEL_FACET = 0.01;
  /** A line below this is level, degrees: a millimetre a metre. */
  private static final double LEVEL_LINE = 0.057;
  /** A facet that falls away across a line less than this does not, tan of the angle. */
  private static final double FALLS = 1e-3;
  /** Roof drains by their class: the entity itself, or what a release before it had in its place. */
  private static final Set<String> OUTLETS = Set.of("IfcWasteTerminal");

  final Roof roof;
  final List<FacetCells> facets = new ArrayList<>();
  /** By edge; null for an edge along which no water can run. */
  final List<Node> lines = new ArrayList<>();
  final List<String> junctionOfEdge;
  private final PlanIndex<Integer> facetIndex;
  private final PlanIndex<Integer> edgeIndex;
  private final List<List<Integer>> edgesOfFacet = new ArrayList<>();

  RoofWater(Roof roof, List<Junction> junctions) {
    this.roof = roof;
    this.junctionOfEdge = EdgeJunctions.of(roof, junctions);
    roof.facets().forEach(f -> edgesOfFacet.add(new ArrayList<>()));
    List<Integer> numbers = new ArrayList<>();
    for (int e = 0; e < roof.edges().size(); e++) {
      edgesOfFacet.get(roof.edges().get(e).facet()).add(e);
      numbers.add(e);
    }
    for (int f = 0; f < roof.facets().size(); f++) {
      facets.add(cells(f));
    }
    numbers.forEach(e -> lines.add(carries(e) ? line(e) : null));
    this.edgeIndex = new PlanIndex<>(numbers, e -> Box3.of(List.of(edge(e).from(), edge(e).to())));
    this.facetIndex = new PlanIndex<>(facets.stream().map(f -> f.facet).toList(), this::box);
  }

  private FacetCells cells(int number) {
    Facet facet = roof.facets().get(number);
    boolean curved = roof.face(number).isCurved();
    boolean level = facet.plane().slopeDegrees() < (curved ? LEVEL_FACET : LEVEL_FACE);
    return new FacetCells(number, roof.face(number).id(), facet.plane(), level,
        facet.area().area() * Math.abs(facet.plane().normal().z()), edgesOfFacet.get(number), roof.edges());
  }

  private Box3 box(int facet) {
    return edgesOfFacet.get(facet).stream().map(this::edge).map(e -> Box3.of(List.of(e.from(), e.to()))).reduce(Box3.EMPTY, Box3::union);
  }

  private Node line(int e) {
    String face = roof.face(edge(e).facet()).id();
    String junction = junctionOfEdge.get(e);
    return new Node(junction.isEmpty() ? WaterPlace.face(face) : WaterPlace.junction(junction), face, 0, edge(e).lengthM());
  }

  BoundaryEdge edge(int e) {
    return roof.edges().get(e);
  }

  List<Integer> edgesOf(int facet) {
    return edgesOfFacet.get(facet);
  }

  /** Whether water that comes to the edge runs along it: nothing lies lower beyond it. */
  private boolean carries(int e) {
    Contact c = edge(e).contact();
    return !(c instanceof Contact.Free) && rise(edge(e), edge(e).facet(), true) > -FALLS
        && !(c instanceof Contact.OtherFacet o && (facets.get(o.facet()).pool != null || falls(e, o.facet())));
  }

  /** Whether the facet on the other side of an edge falls away from it. */
  boolean falls(int e, int other) {
    return facets.get(other).pool == null && rise(edge(e), other, false) < -FALLS;
  }

  /** tan of the angle by which a facet rises from the line, to its left or right. */
  private double rise(BoundaryEdge e, int facet, boolean left) {
    Vec3 d = e.to().minus(e.from());
    double l = d.planLength();
    Plane p = roof.facets().get(facet).plane();
    return l < 1e-9 ? 0 : (left ? 1 : -1) * (p.normal().x() * d.y() - p.normal().y() * d.x()) / (p.normal().z() * l);
  }

  /** Whether an edge is the outline of an outlet. */
  boolean isOutlet(int e) {
    return edge(e).contact() instanceof Obstacle o && OUTLETS.contains(o.ifcClass());
  }

  /** Whether a line falls neither way. */
  boolean isLevel(int e) {
    Vec3 d = edge(e).to().minus(edge(e).from());
    return Math.abs(d.z()) <= Math.tan(Math.toRadians(LEVEL_LINE)) * d.planLength();
  }

  /** The end of an edge that lies lower. */
  Vec3 lowEnd(int e) {
    return edge(e).from().z() < edge(e).to().z() ? edge(e).from() : edge(e).to();
  }

  Vec3 highEnd(int e) {
    return edge(e).from().z() < edge(e).to().z() ? edge(e).to() : edge(e).from();
  }

  /** Facets whose boxes come within {@code reach} of a box in plan. */
  List<Integer> facetsNear(Box3 box, double reach) {
    return facetIndex.overlappingInPlan(box.grown(reach));
  }

  /** Edges of which an end lies within {@code reach} of a point, in space. */
  List<Integer> edgesAt(Vec3 p, double reach) {
    return edgeIndex.overlapping(Box3.of(List.of(p)).grown(reach)).stream()
        .filter(e -> Math.min(p.distance(edge(e).from()), p.distance(edge(e).to())) <= reach).toList();
  }

  /** The highest facet more than {@code least} metres below a point, other than one; null where there is none. */
  FacetCells below(Vec3 p, double least, List<Integer> candidates) {
    FacetCells highest = null;
    double elevation = Double.NEGATIVE_INFINITY;
    for (int f : candidates) {
      double z = roof.facets().get(f).plane().elevation(p.x(), p.y());
      if (z < p.z() - least && z > elevation && holds(f, p)) {
        highest = facets.get(f);
        elevation = z;
      }
    }
    return highest;
  }

  private boolean holds(int f, Vec3 p) {
    FacetCells cells = facets.get(f);
    Vec2 under = cells.under(p);
    return cells.pool == null ? cells.contains(under) : roof.facets().get(f).area().contains(under);
  }
}
