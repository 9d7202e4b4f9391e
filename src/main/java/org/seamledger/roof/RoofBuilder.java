package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamledger.element.Building;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Headway;

/** Elements → exposed roof faces with their outlines: see the package's description for the steps. */
public final class RoofBuilder {

  /** Roof elements whose boxes come closer than this in plan (metres) are looked at together. */
  private static final double TOGETHER = 1;
  private static final double SIMPLIFY = 2e-5;
  /** Facets in which no wider circle than this fits (metres) may be parts of a curve. */
  private static final double NARROW = 0.6;
  /** Facets that turn by less than this (degrees) are one flat face drawn in pieces. */
  private static final double SAME_FACE = 1;

  private final Tolerance tolerance;
  private final List<ExposedFacet> facets = new ArrayList<>();
  private final List<BoundaryEdge> edges = new ArrayList<>();

  private RoofBuilder(Tolerance tolerance) {
    this.tolerance = tolerance;
  }

  public static Roof build(Building building, Tolerance tolerance) {
    return build(building, tolerance, Headway.UNHEARD);
  }

  /** @param headway hears of the building, surface by surface */
  public static Roof build(Building building, Tolerance tolerance, Headway headway) {
    RoofBuilder builder = new RoofBuilder(tolerance);
    List<Part> roofs = building.roofs().stream().map(Part::roof).filter(p -> !p.box().isEmpty() && p.box().isBounded()).toList();
    PlanIndex<Part> neighbours = new PlanIndex<>(building.neighbours().stream().map(Part::neighbour)
        .filter(p -> !p.box().isEmpty() && p.box().isBounded()).toList(), Part::box);
    int done = 0;
    for (List<Part> group : groups(roofs)) {
      builder.addGroup(group, neighbours, headway.part(done / (double) roofs.size(), (done + group.size()) / (double) roofs.size()));
      done += group.size();
    }
    return builder.roof();
  }

  /** Roof elements that can meet, cover or pierce each other, by the overlap of their boxes in plan. */
  private static List<List<Part>> groups(List<Part> roofs) {
    Map<Part, Integer> number = new HashMap<>();
    int[] parent = new int[roofs.size()];
    for (int i = 0; i < roofs.size(); i++) {
      number.put(roofs.get(i), i);
      parent[i] = i;
    }
    PlanIndex<Part> index = new PlanIndex<>(roofs, Part::box);
    for (int i = 0; i < roofs.size(); i++) {
      for (Part near : index.overlappingInPlan(roofs.get(i).box().grown(TOGETHER))) {
        join(parent, i, number.get(near));
      }
    }
    Map<Integer, List<Part>> groups = new TreeMap<>();
    for (int i = 0; i < roofs.size(); i++) {
      groups.computeIfAbsent(root(parent, i), k -> new ArrayList<>()).add(roofs.get(i));
    }
    return List.copyOf(groups.values());
  }

  private static int root(int[] parent, int i) {
    int r = i;
    while (parent[r] != r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  }

  private static void join(int[] parent, int i, int j) {
    int a = root(parent, i);
    int b = root(parent, j);
    parent[Math.max(a, b)] = Math.min(a, b);
  }

  private void addGroup(List<Part> group, PlanIndex<Part> neighbours, Headway headway) {
    Thickness thickness = new Thickness();
    TopSurfaceFinder.Found surfaces = TopSurfaceFinder.find(group, thickness, tolerance, headway.part(0, 0.6));
    ObstacleFinder obstacleFinder = new ObstacleFinder(neighbours, new PlanIndex<>(group, Part::box), tolerance);
    Exposure exposure = new Exposure(surfaces.all(), tolerance);
    List<ExposedFacet> found = new ArrayList<>();
    int done = 0;
    for (TopSurface top : surfaces.tops()) {
      List<Obstacle> obstacles = obstacleFinder.find(top, headway.part(0.6, 0.85).part(done++, surfaces.tops().size()));
      double thick = thickness.of(top);
      for (Region part : exposure.of(top, obstacles).parts()) {
        found.add(new ExposedFacet(top.plane(), part.simplified(SIMPLIFY), top, obstacles, thick));
      }
    }
    List<ExposedFacet> met = Meeting.of(found, tolerance, headway.part(0.85, 0.9)).stream()
        .map(f -> f.withRegion(f.region().simplified(SIMPLIFY))).toList();
    int first = facets.size();
    facets.addAll(met);
    for (BoundaryEdge e : EdgeMatcher.edges(met, tolerance, headway.part(0.9, 1))) {
      edges.add(new BoundaryEdge(e.facet() + first, e.from(), e.to(), shifted(e.contact(), first), e.elements()));
    }
  }

  private static Contact shifted(Contact c, int first) {
    return c.kind() != Contact.Kind.FACE ? c
        : new Contact(c.kind(), c.otherFacet() + first, c.neighbour(), c.neighbourClass(), c.heightM(), c.round(), c.outline(), c.gapM());
  }

  // ---- faces

  private Roof roof() {
    int[] parent = new int[facets.size()];
    for (int i = 0; i < parent.length; i++) {
      parent[i] = i;
    }
    for (BoundaryEdge e : edges) {
      if (e.contact().kind() == Contact.Kind.FACE && isOneFace(e)) {
        join(parent, e.facet(), e.contact().otherFacet());
      }
    }
    Map<Integer, List<Integer>> members = new TreeMap<>();
    for (int i = 0; i < parent.length; i++) {
      members.computeIfAbsent(root(parent, i), k -> new ArrayList<>()).add(i);
    }
    List<List<Integer>> ordered = new ArrayList<>(members.values());
    ordered.forEach(m -> m.sort(Comparator.comparingDouble((Integer i) -> facets.get(i).box().minZ()).thenComparing(i -> i)));
    ordered.sort(Comparator.comparing((List<Integer> m) -> String.join(" ", elements(m)))
        .thenComparing(m -> place(m.get(0))));
    double[] inner = innerEdges(parent);
    List<RoofFace> faces = new ArrayList<>();
    Integer[] faceOf = new Integer[facets.size()];
    for (List<Integer> m : ordered) {
      m.forEach(i -> faceOf[i] = faces.size());
      faces.add(new RoofFace("F" + (faces.size() + 1), m.stream().map(this::facet).toList(), elements(m),
          inner[root(parent, m.get(0))]));
    }
    return new Roof(faces, facets.stream().map(f -> new Facet(f.plane(), f.region())).toList(), List.of(faceOf), edges, tolerance);
  }

  /** By root facet: length of the outlines between facets of the same face. */
  private double[] innerEdges(int[] parent) {
    double[] sums = new double[facets.size()];
    for (BoundaryEdge e : edges) {
      if (e.contact().kind() == Contact.Kind.FACE && root(parent, e.facet()) == root(parent, e.contact().otherFacet())) {
        sums[root(parent, e.facet())] += e.lengthM();
      }
    }
    return sums;
  }

  private Facet facet(int i) {
    return new Facet(facets.get(i).plane(), facets.get(i).region());
  }

  private List<String> elements(List<Integer> members) {
    TreeSet<String> ids = new TreeSet<>();
    for (int i : members) {
      ExposedFacet f = facets.get(i);
      for (TopSurface.Piece p : f.top().pieces()) {
        if (p.region().distance(f.region()) <= tolerance.gapM()) {
          ids.add(p.part().id());
        }
      }
    }
    return List.copyOf(ids);
  }

  /** Sorts faces of the same elements by where they are, to the centimetre. */
  private String place(int i) {
    Vec3 p = TopSurface.at(facets.get(i).plane(), facets.get(i).region().interiorPoint());
    return String.format(java.util.Locale.ROOT, "%012.2f %012.2f %012.2f", p.x() + 1e7, p.y() + 1e7, p.z() + 1e7);
  }

  private boolean isOneFace(BoundaryEdge e) {
    ExposedFacet a = facets.get(e.facet());
    ExposedFacet b = facets.get(e.contact().otherFacet());
    double turn = Math.toDegrees(Math.atan2(a.plane().normal().cross(b.plane().normal()).length(),
        a.plane().normal().dot(b.plane().normal())));
    return turn < SAME_FACE || turn < tolerance.facetTurnDegrees()
        && isNarrowAlong(e, a) && isNarrowAlong(e, b);
  }

  /** Whether the edge runs along a narrow facet, and not across the end of one. */
  private static boolean isNarrowAlong(BoundaryEdge e, ExposedFacet f) {
    return f.region().area() / e.lengthM() < NARROW && f.region().isNarrowerThan(NARROW);
  }
}
