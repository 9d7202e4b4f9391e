package org.seamledger.junction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Progress;
import org.seamledger.roof.BoundaryEdge;
import org.seamledger.roof.Contact;
import org.seamledger.roof.Obstacle;
import org.seamledger.roof.Roof;

/**
 * Outlines of facets → junctions: lines that two faces share counted once, adjoining stretches against the same thing joined where they
 * are collinear (or, along a curved face, nearly so), the whole line of a round thing one junction.
 */
public final class JunctionFinder {

  /** Square of a length (metres) below which a stretch is a point. */
  private static final double NO_LENGTH = 1e-12;

  private final Roof roof;
  /** Stretches between facets, by the pair of them; made when first used. */
  private Map<Long, List<BoundaryEdge>> facing;

  private JunctionFinder(Roof roof) {
    this.roof = roof;
  }

  /** @param progress receives how far the finding is, line by line */
  public static List<Junction> find(Roof roof, Progress progress) {
    return new JunctionFinder(roof).run(progress);
  }

  private List<Junction> run(Progress progress) {
    Map<String, List<BoundaryEdge>> groups = new LinkedHashMap<>();
    for (BoundaryEdge e : roof.edges()) {
      if (countsHere(e)) {
        groups.computeIfAbsent(key(e), k -> new ArrayList<>()).add(e);
      }
    }
    Chains chains = new Chains(roof);
    List<Junction> all = new ArrayList<>();
    for (List<BoundaryEdge> group : progress.over(groups.values())) {
      for (List<BoundaryEdge> chain : chains.of(group)) {
        if (chain.stream().mapToDouble(BoundaryEdge::lengthM).sum() > roof.limits().lines().roundingM()) {
          all.add(junction(chain));
        }
      }
    }
    return named(all);
  }

  /** A line between two facets counts on the side of the facet with the lower number, and not at all inside a face. */
  private boolean countsHere(BoundaryEdge e) {
    return !(e.contact() instanceof Contact.OtherFacet other)
        || e.facet() < other.facet() && !roof.faceOfFacet().get(e.facet()).equals(roof.faceOfFacet().get(other.facet()));
  }

  /** Stretches with one key may be one line. */
  private String key(BoundaryEdge e) {
    if (LineFacts.isRound(e.contact())) {
      return "round " + ((Obstacle) e.contact()).globalId();
    }
    return roof.face(e.facet()).id() + " " + beyond(e.contact());
  }

  private String beyond(Contact c) {
    if (c instanceof Contact.OtherFacet other) {
      return "face " + roof.face(other.facet()).id();
    }
    // A wall's line is one however many elements the wall is modelled in.
    return c instanceof Obstacle.Penetration p ? "penetration " + p.globalId()
        : c instanceof Obstacle.OpenHole h ? "hole " + h.globalId() : c instanceof Obstacle ? "wall" : "nothing";
  }

  private Junction junction(List<BoundaryEdge> chain) {
    BoundaryEdge longest = longest(chain);
    List<Vec3> path = new ArrayList<>();
    path.add(chain.get(0).from());
    Set<String> faces = new TreeSet<>(Comparator.comparingInt((String s) -> Integer.parseInt(s.substring(1))));
    Set<String> roofElements = new TreeSet<>();
    for (BoundaryEdge e : chain) {
      path.add(e.to());
      faces.add(roof.face(e.facet()).id());
      roofElements.addAll(e.elements());
      if (e.contact() instanceof Contact.OtherFacet other) {
        faces.add(roof.face(other.facet()).id());
        roofElements.addAll(elementsBeyond(e, other.facet()));
      }
    }
    Set<String> elements = new LinkedHashSet<>(roofElements);
    chain.stream().flatMap(e -> e.contact() instanceof Obstacle o ? Stream.of(o.globalId()) : Stream.empty())
        .filter(n -> !n.isEmpty()).sorted().forEach(elements::add);
    Facts facts = new LineFacts(roof, longest).facts();
    if (facts.has("upstandM")) {
      facts = facts.toBuilder().number("upstandM", chain.stream()
          .mapToDouble(e -> e.contact() instanceof Obstacle o ? o.heightM() : 0).max().orElse(0)).build();
    }
    return new Junction("", straightened(path), List.copyOf(faces), List.copyOf(elements), facts);
  }

  /**
   * The stretch that speaks for the line: the longest, and of a wall's line the longest at a wall if there is any. Along a curved face it
   * is one where the face slopes as it does elsewhere on the line: at the crown of a vault it lies level.
   */
  private BoundaryEdge longest(List<BoundaryEdge> chain) {
    double steepest = chain.stream().mapToDouble(this::slope).max().orElseThrow();
    return chain.stream().max(Comparator.<BoundaryEdge>comparingInt(e -> e.contact() instanceof Obstacle.Wall ? 1 : 0)
        .thenComparingInt(e -> roof.face(e.facet()).isCurved() && slope(e) < steepest / 2 ? 0 : 1)
        .thenComparingDouble(BoundaryEdge::lengthM)).orElseThrow();
  }

  private double slope(BoundaryEdge e) {
    return roof.facets().get(e.facet()).plane().slopeDegrees();
  }

  /** Elements of the facet on the other side: those that its own stretch facing this one names. */
  private Set<String> elementsBeyond(BoundaryEdge e, int otherFacet) {
    Set<String> ids = new TreeSet<>();
    double slack = roof.limits().lines().facingShare();
    Vec3 mid = e.from().towards(e.to(), 0.5);
    for (BoundaryEdge o : facing().getOrDefault(pair(otherFacet, e.facet()), List.of())) {
      Vec3 d = o.to().minus(o.from());
      double t = mid.minus(o.from()).dot(d) / Math.max(NO_LENGTH, d.dot(d));
      if (t >= -slack && t <= 1 + slack) {
        ids.addAll(o.elements());
      }
    }
    return ids;
  }

  private Map<Long, List<BoundaryEdge>> facing() {
    if (facing == null) {
      facing = new HashMap<>();
      for (BoundaryEdge e : roof.edges()) {
        if (e.contact() instanceof Contact.OtherFacet other) {
          facing.computeIfAbsent(pair(e.facet(), other.facet()), k -> new ArrayList<>()).add(e);
        }
      }
    }
    return facing;
  }

  private static long pair(int a, int b) {
    return (long) a << 32 | b;
  }

  private List<Vec3> straightened(List<Vec3> path) {
    List<Vec3> kept = new ArrayList<>(path);
    for (int i = 1; i + 1 < kept.size(); i++) {
      Vec3 d = kept.get(i).minus(kept.get(i - 1));
      Vec3 e = kept.get(i + 1).minus(kept.get(i));
      if (Math.atan2(d.cross(e).length(), d.dot(e)) < roof.limits().lines().straightRadians()) {
        kept.remove(i--);
      }
    }
    return kept;
  }

  private static List<Junction> named(List<Junction> junctions) {
    List<Junction> ordered = new ArrayList<>(junctions);
    ordered.replaceAll(j -> new Junction(JunctionId.of(j), j.path(), j.faces(), j.elements(), j.facts()));
    ordered.sort(Comparator.comparing(Junction::id));
    Map<String, Integer> seen = new HashMap<>();
    ordered.replaceAll(j -> {
      int n = seen.merge(j.id(), 1, Integer::sum);
      return n == 1 ? j : new Junction(j.id() + "-" + n, j.path(), j.faces(), j.elements(), j.facts());
    });
    return ordered;
  }
}
