package org.seamledger.roof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.element.Building;
import org.seamledger.geometry.DisjointSets;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.progress.Progress;
import org.seamledger.progress.SharedWork;

/** Elements → exposed roof faces with their outlines: see the package's description for the steps. */
public final class RoofBuilder {

  /** Shares of a group's work that are done after the steps that take long. */
  private static final double SURFACES = 0.6;
  private static final double EXPOSED = 0.85;
  private static final double MET = 0.9;

  private final Tolerance tolerance;
  private final SurfaceLimits limits;
  private final List<ExposedFacet> facets = new ArrayList<>();
  private final List<BoundaryEdge> edges = new ArrayList<>();

  private RoofBuilder(Tolerance tolerance, SurfaceLimits limits) {
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /**
   * The exposed surface of a building's roofs; without faces where it has none.
   *
   * @param building in metres, Z up, near the origin
   * @param tolerance how exact it is taken to be
   * @param limits by which surface is told from slack
   * @param progress receives how far the building is done, surface by surface
   */
  public static Roof build(Building building, Tolerance tolerance, SurfaceLimits limits, Progress progress) {
    RoofBuilder builder = new RoofBuilder(tolerance, limits);
    List<Part> roofs = building.roofs().stream().map(Part::roof).filter(RoofBuilder::hasBody).toList();
    PlanIndex<Part> neighbours = new PlanIndex<>(building.neighbours().stream().map(Part::neighbour).filter(RoofBuilder::hasBody).toList(),
        Part::box);
    SharedWork.of(groups(roofs, limits.faces().togetherM()), progress, (group, part) -> builder.surface(group, neighbours, part))
        .forEach(builder::add);
    return FaceJoiner.roof(builder.facets, builder.edges, tolerance, limits);
  }

  private static boolean hasBody(Part part) {
    return !part.box().isEmpty() && part.box().isBounded();
  }

  /** Roof elements that can meet, cover or pierce each other, by the overlap of their boxes in plan. */
  private static List<List<Part>> groups(List<Part> roofs, double togetherM) {
    Map<Part, Integer> number = new HashMap<>();
    for (int i = 0; i < roofs.size(); i++) {
      number.put(roofs.get(i), i);
    }
    DisjointSets near = new DisjointSets(roofs.size());
    PlanIndex<Part> index = new PlanIndex<>(roofs, Part::box);
    for (int i = 0; i < roofs.size(); i++) {
      for (Part other : index.overlappingInPlan(roofs.get(i).box().grown(togetherM))) {
        near.join(i, number.get(other));
      }
    }
    return near.sets().stream().map(set -> set.stream().map(roofs::get).toList()).toList();
  }

  /** What a group of roof elements shows, its edges' facets counted from its own first. */
  private record GroupSurface(List<ExposedFacet> facets, List<BoundaryEdge> edges) {
  }

  private void add(GroupSurface surface) {
    int first = facets.size();
    facets.addAll(surface.facets());
    surface.edges().forEach(e -> edges.add(e.shifted(first)));
  }

  private GroupSurface surface(List<Part> group, PlanIndex<Part> neighbours, Progress progress) {
    Thickness thickness = new Thickness(tolerance, limits.tops());
    TopSurfaceFinder.Found surfaces = TopSurfaceFinder.find(group, thickness, tolerance, limits, progress.part(0, SURFACES));
    List<ExposedFacet> exposed = exposed(group, surfaces, thickness, neighbours, progress);
    List<ExposedFacet> met = Meeting.of(exposed, surfaces.curves(), tolerance, limits.folds(), progress.part(EXPOSED, MET)).stream()
        .map(f -> f.withRegion(f.region().simplified(limits.faces().simplifyM())))
        // Where an edge is moved a corner may be left over: rounding, no face.
        .filter(f -> f.region().area() > limits.tops().speckM2()).toList();
    return new GroupSurface(met, EdgeMatcher.edges(met, tolerance, limits, progress.part(MET, 1)));
  }

  private List<ExposedFacet> exposed(List<Part> group, TopSurfaceFinder.Found surfaces, Thickness thickness, PlanIndex<Part> neighbours,
      Progress progress) {
    ObstacleFinder obstacleFinder = new ObstacleFinder(neighbours, new PlanIndex<>(group, Part::box), tolerance, limits);
    Exposure exposure = new Exposure(surfaces.all(), surfaces.curves(), tolerance, limits);
    List<ExposedFacet> found = new ArrayList<>();
    int done = 0;
    for (TopSurface top : surfaces.tops()) {
      List<Obstacle> obstacles = obstacleFinder.find(top, progress.part(SURFACES, EXPOSED).part(done++, surfaces.tops().size()));
      double thick = thickness.of(top);
      for (Region part : exposure.of(top, obstacles).parts()) {
        Region exact = part.simplified(limits.faces().simplifyM());
        found.add(new ExposedFacet(top.plane(), exact, top, obstacles, thick, surfaces.curves().isCurved(top.plane())));
      }
    }
    return found;
  }
}
