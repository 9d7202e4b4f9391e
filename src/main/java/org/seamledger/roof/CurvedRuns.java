package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;

/** The curves among the exposed facets: facets of one element that meet, and turn as {@link TurningSurfaces} says. */
final class CurvedRuns {

  /** Of no curve. */
  static final int NONE = TurningSurfaces.NONE;

  private CurvedRuns() {
  }

  /** For each facet the number of its curve, or {@link #NONE}. */
  static int[] of(List<ExposedFacet> facets, List<BoundaryEdge> edges, Tolerance tolerance, SurfaceLimits.Faces limits) {
    List<TurningSurfaces.Flat> flats = facets.stream()
        .map(f -> new TurningSurfaces.Flat(f.plane().normal(), f.region().rings().stream().flatMap(r -> r.points().stream())
            .map(p -> TopSurface.at(f.plane(), p)).toList()))
        .toList();
    return TurningSurfaces.curves(flats, meets(facets, edges, tolerance), tolerance, limits);
  }

  private static Set<String> elements(ExposedFacet f) {
    return f.top().pieces().stream().map(p -> p.part().id()).collect(Collectors.toCollection(TreeSet::new));
  }

  private static List<TurningSurfaces.Meet> meets(List<ExposedFacet> facets, List<BoundaryEdge> edges, Tolerance tolerance) {
    List<Set<String>> elements = facets.stream().map(CurvedRuns::elements).toList();
    List<TurningSurfaces.Meet> meets = new ArrayList<>();
    for (BoundaryEdge e : edges) {
      if (e.contact() instanceof Contact.OtherFacet other
          && TurningSurfaces.turn(normal(facets, e.facet()), normal(facets, other.facet())) < tolerance.facetTurnDegrees()
          && elements.get(e.facet()).stream().anyMatch(elements.get(other.facet())::contains)) {
        ExposedFacet beyond = facets.get(other.facet());
        Vec3 middle = TopSurface.at(beyond.plane(), beyond.region().centroid());
        meets.add(new TurningSurfaces.Meet(e.facet(), other.facet(),
            facets.get(e.facet()).plane().height(middle) <= tolerance.coincidenceM()));
      }
    }
    return meets;
  }

  private static Vec3 normal(List<ExposedFacet> facets, int i) {
    return facets.get(i).plane().normal();
  }
}
