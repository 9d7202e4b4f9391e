package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import org.seamledger.geometry.DisjointSets;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;

/**
 * Joins facets that meet to faces: flat ones drawn in pieces, and runs of narrow facets that turn little, which are curved. Faces are
 * numbered
 * by their elements and then by where they are, so that the order in a file doesn't matter.
 */
final class FaceJoiner {

  /** Keeps coordinates positive in the words by which faces are ordered, metres; models lie near the origin. */
  private static final double POSITIVE = 1e7;

  private final List<ExposedFacet> facets;
  private final List<NarrowGaps.Stretch> gaps;
  private final Tolerance tolerance;
  private final SurfaceLimits.Faces limits;
  private final DisjointSets sets;
  private final int[] curve;
  private final SurfaceLimits.Stretches stretches;
  private final Map<Long, Double> shared = new HashMap<>();

  private FaceJoiner(List<ExposedFacet> facets, List<BoundaryEdge> edges, Tolerance tolerance, SurfaceLimits all) {
    this.facets = facets;
    this.tolerance = tolerance;
    this.limits = all.faces();
    this.stretches = all.stretches();
    this.sets = new DisjointSets(facets.size());
    this.gaps = NarrowGaps.of(facets, edges, tolerance, stretches);
    this.curve = CurvedRuns.of(facets, gaps.stream().flatMap(s -> s.across().stream()).toList(), tolerance, limits);
    for (BoundaryEdge e : edges) {
      if (e.contact() instanceof Contact.OtherFacet other) {
        shared.merge(pair(e.facet(), other.facet()), e.lengthM(), Double::sum);
      }
    }
  }

  static Roof roof(List<ExposedFacet> facets, List<BoundaryEdge> edges, Tolerance tolerance, SurfaceLimits limits) {
    FaceJoiner joiner = new FaceJoiner(facets, edges, tolerance, limits);
    Integer[] faceOf = new Integer[facets.size()];
    List<BoundaryEdge> joined = joiner.joined(edges);
    List<RoofFace> faces = joiner.faces(joined, faceOf);
    return new Roof(faces, facets.stream().map(FaceJoiner::facet).toList(), List.of(faceOf), joined, tolerance, limits);
  }

  /** Joins what is one face; the stretches of all outlines, those that end at a narrow gap in a curve with what lies across it. */
  private List<BoundaryEdge> joined(List<BoundaryEdge> edges) {
    for (BoundaryEdge e : edges) {
      if (e.contact() instanceof Contact.OtherFacet other && isOneFace(e, other)) {
        sets.join(e.facet(), other.facet());
      }
    }
    gaps.forEach(s -> s.across().stream().filter(this::isOneCurve)
        .forEach(e -> sets.join(e.facet(), ((Contact.OtherFacet) e.contact()).facet())));
    List<BoundaryEdge> joined = new ArrayList<>();
    for (NarrowGaps.Stretch s : gaps) {
      if (s.across().stream().anyMatch(this::goesOn)) {
        s.across().forEach(e -> joined.add(goesOn(e) ? e : e.with(s.matched().contact())));
      } else {
        joined.add(s.matched());
      }
    }
    OpenChains chains = new OpenChains(List.copyOf(joined), tolerance.gapM(), stretches);
    for (int i = 0; i < joined.size(); i++) {
      if (chains.isTiny(i)) {
        int left = i;
        chains.beside(i).stream().filter(this::goesOn).findFirst().ifPresent(b -> joined.set(left, joined.get(left).with(b.contact())));
      }
    }
    return joined;
  }

  private boolean isOneCurve(BoundaryEdge e) {
    return e.contact() instanceof Contact.OtherFacet other && curve[e.facet()] != CurvedRuns.NONE
        && curve[e.facet()] == curve[other.facet()];
  }

  /** Whether a stretch has more of its own curved face beyond it: of its curve, or what is joined to that. */
  private boolean goesOn(BoundaryEdge e) {
    return e.contact() instanceof Contact.OtherFacet other && sets.root(e.facet()) == sets.root(other.facet())
        && (curve[e.facet()] != CurvedRuns.NONE || curve[other.facet()] != CurvedRuns.NONE);
  }

  private List<RoofFace> faces(List<BoundaryEdge> edges, Integer[] faceOf) {
    double[] inner = innerEdges(edges);
    List<RoofFace> faces = new ArrayList<>();
    for (List<Integer> members : ordered()) {
      members.forEach(i -> faceOf[i] = faces.size());
      faces.add(new RoofFace("F" + (faces.size() + 1), members.stream().map(i -> facet(facets.get(i))).toList(), elements(members),
          inner[sets.root(members.get(0))], isCurved(members)));
    }
    return faces;
  }

  /** The facets of a face, with the ids of its elements in one word. */
  private record Ordered(String elements, List<Integer> members) {
  }

  private List<List<Integer>> ordered() {
    List<List<Integer>> ordered = new ArrayList<>();
    for (List<Integer> set : sets.sets()) {
      List<Integer> members = new ArrayList<>(set);
      members.sort(Comparator.comparingDouble((Integer i) -> facets.get(i).box().minZ()).thenComparing(i -> i));
      ordered.add(members);
    }
    return ordered.stream().map(m -> new Ordered(String.join(" ", elements(m)), m))
        .sorted(Comparator.comparing(Ordered::elements).thenComparing(o -> place(o.members.get(0)))).map(Ordered::members).toList();
  }

  /** By the least facet of a face: length of the outlines between facets of the face, metres. */
  private double[] innerEdges(List<BoundaryEdge> edges) {
    double[] sums = new double[facets.size()];
    for (BoundaryEdge e : edges) {
      if (e.contact() instanceof Contact.OtherFacet other && sets.root(e.facet()) == sets.root(other.facet())) {
        sums[sets.root(e.facet())] += e.lengthM();
      }
    }
    return sums;
  }

  private static Facet facet(ExposedFacet f) {
    return new Facet(f.plane(), f.region());
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
    return String.format(Locale.ROOT, "%012.2f %012.2f %012.2f", p.x() + POSITIVE, p.y() + POSITIVE, p.z() + POSITIVE);
  }

  private boolean isCurved(List<Integer> members) {
    double limit = Math.sin(Math.toRadians(limits.curvedDegrees()));
    Vec3 first = facets.get(members.get(0)).plane().normal();
    return members.stream().anyMatch(i -> facets.get(i).plane().normal().cross(first).length() > limit);
  }

  private boolean isOneFace(BoundaryEdge e, Contact.OtherFacet other) {
    ExposedFacet a = facets.get(e.facet());
    ExposedFacet b = facets.get(other.facet());
    double turn = Math.toDegrees(Math.atan2(a.plane().normal().cross(b.plane().normal()).length(),
        a.plane().normal().dot(b.plane().normal())));
    return turn < limits.sameDegrees() || turn < tolerance.facetTurnDegrees()
        && (curve[e.facet()] != CurvedRuns.NONE && curve[e.facet()] == curve[other.facet()]
            || isNarrowAlong(e, other, a) && isNarrowAlong(e, other, b));
  }

  /** Whether the two facets meet along a narrow one, and not across its end: all that they share counts, however often it is parted. */
  private boolean isNarrowAlong(BoundaryEdge e, Contact.OtherFacet other, ExposedFacet f) {
    return f.region().area() / shared.get(pair(e.facet(), other.facet())) < limits.narrowM()
        && f.region().isNarrowerThan(limits.narrowM());
  }

  private static long pair(int a, int b) {
    return (long) a << 32 | b;
  }
}
