package org.seamledger.junction;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Headway;
import org.seamledger.roof.BoundaryEdge;
import org.seamledger.roof.Contact;
import org.seamledger.roof.Roof;
import org.seamledger.roof.RoofFace;

/**
 * Outlines of facets → junctions: lines that two faces share counted once, adjoining stretches against the same thing joined where they
 * are collinear (or, along a curved face, nearly so), the whole line of a round thing one junction.
 */
public final class JunctionFinder {

  /** Stretches whose ends come this close (metres) adjoin. */
  private static final double ADJOIN = BoundaryEdge.TINY;
  /** Shorter lines (metres) are rounding of the overlays. */
  private static final double ROUNDING = 5e-4;
  private static final double COLLINEAR = Math.toRadians(0.5);
  /** Junctions and a perimeter that differ by less than this (metres, and share) agree. */
  private static final double SUM_SLACK = BoundaryEdge.TINY;
  private static final double SUM_SHARE = 0.001;

  private final Roof roof;

  private JunctionFinder(Roof roof) {
    this.roof = roof;
  }

  public static List<Junction> find(Roof roof) {
    return find(roof, Headway.UNHEARD);
  }

  /** @param headway hears of the finding, line by line */
  public static List<Junction> find(Roof roof, Headway headway) {
    return new JunctionFinder(roof).run(headway);
  }

  private List<Junction> run(Headway headway) {
    Map<String, List<BoundaryEdge>> groups = new LinkedHashMap<>();
    for (BoundaryEdge e : roof.edges()) {
      if (countsHere(e)) {
        groups.computeIfAbsent(key(e), k -> new ArrayList<>()).add(e);
      }
    }
    List<Junction> all = new ArrayList<>();
    for (List<BoundaryEdge> group : headway.over(groups.values())) {
      for (List<BoundaryEdge> chain : chains(group)) {
        if (chain.stream().mapToDouble(BoundaryEdge::lengthM).sum() > ROUNDING) {
          all.add(junction(chain));
        }
      }
    }
    return named(all);
  }

  /** A line between two facets counts on the side of the facet with the lower number, and not at all inside a face. */
  private boolean countsHere(BoundaryEdge e) {
    if (e.contact().kind() != Contact.Kind.FACE) {
      return true;
    }
    int other = e.contact().otherFacet();
    return e.facet() < other && !roof.faceOfFacet().get(e.facet()).equals(roof.faceOfFacet().get(other));
  }

  private String key(BoundaryEdge e) {
    Contact c = e.contact();
    if (c.round()) {
      return "round " + c.neighbour();
    }
    // A wall's line is one however many elements the wall is modelled in.
    boolean wall = c.kind() == Contact.Kind.WALL || c.kind() == Contact.Kind.ROOF_SIDE;
    return roof.face(e.facet()).id() + " " + (wall ? "wall" : c.kind() + " " + c.neighbour()) + " "
        + (c.kind() == Contact.Kind.FACE ? roof.face(c.otherFacet()).id() : "");
  }

  // ---- chains of stretches

  private List<List<BoundaryEdge>> chains(List<BoundaryEdge> group) {
    List<BoundaryEdge> rest = new ArrayList<>(group);
    // Long stretches first: tiny ones then join them, and not each other.
    rest.sort(Comparator.comparing((BoundaryEdge e) -> e.lengthM() < BoundaryEdge.TINY));
    List<List<BoundaryEdge>> chains = new ArrayList<>();
    while (!rest.isEmpty()) {
      List<BoundaryEdge> chain = new ArrayList<>(List.of(rest.remove(0)));
      boolean grown = true;
      while (grown) {
        grown = false;
        for (int i = 0; i < rest.size() && !grown; i++) {
          BoundaryEdge e = rest.get(i);
          if (adjoins(chain.get(chain.size() - 1), e) && turnsLittle(lastLong(chain), e)) {
            chain.add(rest.remove(i));
            grown = true;
          } else if (adjoins(e, chain.get(0)) && turnsLittle(e, firstLong(chain))) {
            chain.add(0, rest.remove(i));
            grown = true;
          }
        }
      }
      chains.add(chain);
    }
    return chains;
  }

  private static BoundaryEdge firstLong(List<BoundaryEdge> chain) {
    return chain.stream().filter(e -> e.lengthM() >= BoundaryEdge.TINY).findFirst().orElse(chain.get(0));
  }

  private static BoundaryEdge lastLong(List<BoundaryEdge> chain) {
    List<BoundaryEdge> turned = new ArrayList<>(chain);
    Collections.reverse(turned);
    return firstLong(turned);
  }

  private static boolean adjoins(BoundaryEdge a, BoundaryEdge b) {
    return a.to().distance(b.from()) <= ADJOIN;
  }

  private boolean turnsLittle(BoundaryEdge a, BoundaryEdge b) {
    if (a.contact().round() || a.lengthM() < BoundaryEdge.TINY || b.lengthM() < BoundaryEdge.TINY) {
      return true;
    }
    Vec3 d = a.to().minus(a.from());
    Vec3 e = b.to().minus(b.from());
    double turn = Math.atan2(d.cross(e).length(), d.dot(e));
    // Where facets turn by some angle, the lines in which they meet other surfaces may turn by twice that.
    double limit = roof.face(a.facet()).isCurved() || otherIsCurved(a)
        ? Math.toRadians(2 * roof.tolerance().facetTurnDegrees()) : COLLINEAR;
    return turn <= limit;
  }

  private boolean otherIsCurved(BoundaryEdge e) {
    return e.contact().kind() == Contact.Kind.FACE && roof.face(e.contact().otherFacet()).isCurved();
  }

  // ---- one junction

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
      if (e.contact().kind() == Contact.Kind.FACE) {
        faces.add(roof.face(e.contact().otherFacet()).id());
        roofElements.addAll(elementsBeyond(e));
      }
    }
    Set<String> elements = new LinkedHashSet<>(roofElements);
    chain.stream().map(e -> e.contact().neighbour()).filter(n -> !n.isEmpty()).sorted().forEach(elements::add);
    Facts facts = new LineFacts(roof, longest).facts();
    if (facts.has("upstandM")) {
      facts = facts.toBuilder().number("upstandM", chain.stream().mapToDouble(e -> e.contact().heightM()).max().orElse(0)).build();
    }
    return new Junction("", straightened(path), List.copyOf(faces), List.copyOf(elements), facts);
  }

  /** The stretch that speaks for the line: the longest, and of a wall's line the longest at a wall if there is any. */
  private static BoundaryEdge longest(List<BoundaryEdge> chain) {
    return chain.stream().max(Comparator.<BoundaryEdge>comparingInt(e -> e.contact().kind() == Contact.Kind.WALL ? 1 : 0)
        .thenComparingDouble(BoundaryEdge::lengthM)).orElseThrow();
  }

  /** Elements of the facet on the other side: those that its own stretch facing this one names. */
  private Set<String> elementsBeyond(BoundaryEdge e) {
    Set<String> ids = new TreeSet<>();
    Vec3 mid = e.from().towards(e.to(), 0.5);
    for (BoundaryEdge o : facing().getOrDefault(pair(e.contact().otherFacet(), e.facet()), List.of())) {
      Vec3 d = o.to().minus(o.from());
      double t = mid.minus(o.from()).dot(d) / Math.max(1e-12, d.dot(d));
      if (t >= -0.01 && t <= 1.01) {
        ids.addAll(o.elements());
      }
    }
    return ids;
  }

  private Map<Long, List<BoundaryEdge>> facing;

  private Map<Long, List<BoundaryEdge>> facing() {
    if (facing == null) {
      facing = new HashMap<>();
      for (BoundaryEdge e : roof.edges()) {
        if (e.contact().kind() == Contact.Kind.FACE) {
          facing.computeIfAbsent(pair(e.facet(), e.contact().otherFacet()), k -> new ArrayList<>()).add(e);
        }
      }
    }
    return facing;
  }

  private static long pair(int a, int b) {
    return (long) a << 32 | b;
  }

  private static List<Vec3> straightened(List<Vec3> path) {
    List<Vec3> kept = new ArrayList<>(path);
    for (int i = 1; i + 1 < kept.size(); i++) {
      Vec3 d = kept.get(i).minus(kept.get(i - 1));
      Vec3 e = kept.get(i + 1).minus(kept.get(i));
      if (Math.atan2(d.cross(e).length(), d.dot(e)) < 1e-4) {
        kept.remove(i--);
      }
    }
    return kept;
  }

  // ---- ids and order

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

  // ---- the law

  /** A finding for every face around which the junction lengths do not add up to the perimeter of its exposed area. */
  public static List<Finding> perimeterFindings(Roof roof, List<Junction> junctions) {
    Map<String, Double> sums = new HashMap<>();
    for (Junction j : junctions) {
      j.faces().forEach(f -> sums.merge(f, j.lengthM() / (isSplit(j) ? j.faces().size() : 1), Double::sum));
    }
    List<Finding> findings = new ArrayList<>();
    for (RoofFace face : roof.faces()) {
      double perimeter = face.perimeterM();
      double sum = sums.getOrDefault(face.id(), 0.0);
      if (Math.abs(sum - perimeter) > Math.max(SUM_SLACK, SUM_SHARE * perimeter)) {
        findings.add(Finding.of(Code.PERIMETER_MISMATCH, String.format(java.util.Locale.ROOT,
            "Junctions around face %s add up to %.3f m, its perimeter is %.3f m.", face.id(), sum, perimeter), face.elements()));
      }
    }
    return findings;
  }

  /** A round thing that breaks through several faces has one line of which each face has a part. */
  private static boolean isSplit(Junction j) {
    return j.facts().word("against").equals("round");
  }
}
