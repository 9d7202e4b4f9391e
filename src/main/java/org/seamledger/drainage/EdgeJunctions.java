package org.seamledger.drainage;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.roof.BoundaryEdge;
import org.seamledger.roof.Contact;
import org.seamledger.roof.Roof;

/** Which junction each stretch of outline is a part of. */
final class EdgeJunctions {

  private record Part(Junction junction, Vec3 from, Vec3 to) {
    double distance(Vec3 p) {
      Vec3 d = to.minus(from);
      double t = d.dot(d) < 1e-18 ? 0 : Math.max(0, Math.min(1, p.minus(from).dot(d) / d.dot(d)));
      return p.distance(from.towards(to, t));
    }
  }

  private EdgeJunctions() {
  }

  /** For each of the roof's edges the id of its junction; empty inside a face. */
  static List<String> of(Roof roof, List<Junction> junctions) {
    List<Part> parts = new ArrayList<>();
    for (Junction j : junctions) {
      for (int i = 1; i < j.path().size(); i++) {
        parts.add(new Part(j, j.path().get(i - 1), j.path().get(i)));
      }
    }
    double reach = 2 * roof.tolerance().gapM();
    PlanIndex<Part> index = new PlanIndex<>(parts, p -> Box3.of(List.of(p.from(), p.to())).grown(reach));
    return roof.edges().stream().map(e -> junction(roof, e, index)).toList();
  }

  private static String junction(Roof roof, BoundaryEdge e, PlanIndex<Part> index) {
    String face = roof.face(e.facet()).id();
    String other = e.contact() instanceof Contact.OtherFacet o ? roof.face(o.facet()).id() : "";
    if (other.equals(face)) {
      return "";
    }
    Vec3 mid = e.from().towards(e.to(), 0.5);
    String best = "";
    double least = Double.POSITIVE_INFINITY;
    for (Part p : index.overlapping(Box3.of(List.of(mid)))) {
      List<String> faces = p.junction().faces();
      if (faces.contains(face) && (other.isEmpty() || faces.contains(other))) {
        double away = p.distance(mid) + (other.isEmpty() == faces.size() < 2 ? 0 : roof.tolerance().gapM());
        if (away < least) {
          least = away;
          best = p.junction().id();
        }
      }
    }
    return best;
  }
}
