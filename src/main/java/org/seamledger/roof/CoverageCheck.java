package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.seamledger.element.Building;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.UpwardArea.Patch;

/**
 * The check that no roof is lost: what of each roof element looks up ({@link UpwardArea}), what of it is in faces, and why the rest is not.
 * It knows the roof's faces and nothing of how they were found.
 *
 * <p>Reasons are tried in this order: openings take it away; a face has it; other elements stand on it; another layer lies on it; roof
 * surface higher up hides it; it is the end of a slab; it is narrow. What none explains is lost.
 */
public final class CoverageCheck {

  private record Owned(Part part, Patch patch) {
  }

  private record Placed(Facet facet, Set<String> elements) {
  }

  private final Roof roof;
  private final SurfaceLimits.Covered limits;
  private final SurfaceLimits all;
  private final double coincidence;
  private final List<Part> parts;
  private final PlanIndex<Owned> patches;
  private final PlanIndex<Placed> facets;
  private final PlanIndex<Part> bodies;
  private final Map<String, List<Patch>> byElement = new TreeMap<>();

  private CoverageCheck(Building building, Roof roof) {
    this.roof = roof;
    this.all = roof.limits();
    this.limits = roof.limits().covered();
    this.coincidence = roof.tolerance().coincidenceM();
    this.parts = building.roofs().stream().map(CoverageCheck::whole).filter(p -> !p.box().isEmpty() && p.box().isBounded()).toList();
    UpwardArea upward = new UpwardArea(roof.tolerance(), all);
    List<Owned> owned = new ArrayList<>();
    for (Part part : parts) {
      List<Patch> own = upward.of(part.solid());
      byElement.put(part.id(), own);
      own.forEach(p -> owned.add(new Owned(part, p)));
    }
    this.patches = new PlanIndex<>(owned, o -> o.patch().box());
    List<Placed> placed = new ArrayList<>();
    roof.faces().forEach(f -> f.facets().forEach(t -> placed.add(new Placed(t, Set.copyOf(f.elements())))));
    this.facets = new PlanIndex<>(placed, p -> TopSurface.box(p.facet().plane(), p.facet().area()));
    List<Part> standing = new ArrayList<>(building.roofs().stream().map(Part::roof).toList());
    standing.addAll(building.neighbours().stream().map(Part::neighbour).toList());
    this.bodies = new PlanIndex<>(standing.stream().filter(p -> !p.box().isEmpty() && p.box().isBounded()).toList(), Part::box);
  }

  /** The element's body with its openings closed. */
  private static Part whole(Element e) {
    return Part.neighbour(new Element(e.globalId(), e.ifcClass(), e.category(), e.name(), e.model(), e.body(), List.of(), e.whole(),
        e.properties()));
  }

  /** One entry a roof element, in the building's order; elements with no bounded shape have no area. */
  public static List<ElementCoverage> of(Building building, Roof roof) {
    CoverageCheck check = new CoverageCheck(building, roof);
    Set<String> unreadable = building.findings().stream()
        .filter(f -> Set.of(Code.UNSUPPORTED_GEOMETRY.id(), Code.BROKEN_GEOMETRY.id(), Code.ROOF_WITHOUT_SHAPE.id()).contains(f.code()))
        .flatMap(f -> f.elements().stream()).collect(Collectors.toSet());
    return building.roofs().stream().map(e -> check.of(e, !unreadable.contains(e.globalId()))).toList();
  }

  /** What the coverage of a building's elements says that somebody has to know. */
  public static List<Finding> findings(List<ElementCoverage> coverage, Roof roof) {
    List<Finding> findings = new ArrayList<>();
    SurfaceLimits.Covered limits = roof.limits().covered();
    if (roof.faces().isEmpty() && !coverage.isEmpty()) {
      findings.add(Finding.of(Code.NO_FACE, "None of the roof's elements has a face.",
          coverage.stream().map(ElementCoverage::globalId).toList()));
      return findings;
    }
    for (ElementCoverage c : coverage) {
      double limit = Math.max(limits.lostM2(), limits.lostShare() * c.upwardM2());
      if (c.lostM2() > limit) {
        findings.add(Finding.of(c.inFacesM2() > limit ? Code.LOST_AREA : Code.NO_FACE, String.format(Locale.ROOT,
            "Of %.2f m² of %s that look up, %.2f m² are in no face and nothing says why.", c.upwardM2(), c.globalId(), c.lostM2()),
            c.globalId()));
      }
    }
    return findings;
  }

  private ElementCoverage of(Element e, boolean readable) {
    Tally tally = new Tally();
    for (Patch patch : byElement.getOrDefault(e.globalId(), List.of())) {
      account(e, patch, tally);
    }
    return tally.result(e.globalId(), readable);
  }

  private void account(Element e, Patch patch, Tally tally) {
    tally.upward += patch.region().area();
    Region rest = patch.region();
    if (!e.openings().isEmpty()) {
      Region window = TopSurface.window(patch.plane(), patch.box());
      Region holes = Region.unionOf(e.openings().stream().flatMap(o -> o.body().stream())
          .map(b -> b.section(patch.plane(), coincidence, SectionSide.BELOW, window)).toList());
      rest = tally.take(Reason.VOID, rest, holes);
    }
    rest = tally.take(Reason.FACE, rest, faces(e, patch, -limits.faceM(), limits.faceM()));
    for (Region part : rest.parts()) {
      if (part.isNarrowerThan(roof.tolerance().gapM()) || part.area() < all.tops().speckM2()) {
        tally.add(Reason.SMALL, part.area());
      } else {
        explain(e, patch.with(part), tally);
      }
    }
  }

  private void explain(Element e, Patch patch, Tally tally) {
    Region rest = tally.take(Reason.COVERED, patch.region(), standing(patch, tally));
    rest = tally.take(Reason.LAYER, rest, above(patch.with(rest), limits.faceM(), all.tops().buildUpM()));
    rest = tally.take(Reason.FACE, rest, faces(e, patch.with(rest), -limits.faceM(), all.relief().deepestM()));
    rest = tally.take(Reason.ENCLOSED, rest, above(patch.with(rest), limits.faceM(), Double.POSITIVE_INFINITY));
    double explained = patch.region().area() - rest.area();
    for (Region part : rest.parts()) {
      Reason reason = isCutEdge(e, patch.with(part)) ? Reason.EDGE
          : part.isNarrowerThan(limits.stripM()) || explained > all.exposed().coveredShare() * patch.region().area() ? Reason.SMALL
          : Reason.LOST;
      tally.add(reason, part.area());
    }
  }

  /** Where faces with this element lie over the patch, between two heights, metres. */
  private Region faces(Element e, Patch patch, double low, double high) {
    List<Region> over = new ArrayList<>();
    for (Placed p : patch.region().isEmpty() ? List.<Placed>of() : facets.overlappingInPlan(patch.box())) {
      if (p.elements().contains(e.globalId())) {
        over.add(between(p.facet().plane(), p.facet().area(), patch.plane(), low, high).intersect(patch.region()));
      }
    }
    return Region.unionOf(over);
  }

  /** Where other upward area lies over the patch, between two heights, metres. */
  private Region above(Patch patch, double low, double high) {
    List<Region> over = new ArrayList<>();
    for (Owned o : patch.region().isEmpty() ? List.<Owned>of() : patches.overlappingInPlan(patch.box())) {
      if (o.patch().plane() != patch.plane()) {
        over.add(between(o.patch().plane(), o.patch().region(), patch.plane(), low, high).intersect(patch.region()));
      }
    }
    return Region.unionOf(over);
  }

  private static Region between(Plane other, Region region, Plane plane, double low, double high) {
    // Height of the other plane over the point (u, v) of this one, times the other normal's z: linear in u and v.
    Vec3 n = other.normal();
    double a = n.dot(plane.u());
    double b = n.dot(plane.v());
    double c = -other.height(plane.origin());
    Region over = region.projected(other, plane, Vec3.Z).cut(a, b, c - low * n.z());
    return Double.isInfinite(high) ? over : over.cut(-a, -b, high * n.z() - c);
  }

  /** Where other bodies, and this element's own, stand on the patch or go through it. */
  private Region standing(Patch patch, Tally tally) {
    Region window = TopSurface.window(patch.plane(), patch.box());
    List<Region> on = new ArrayList<>();
    for (Part part : bodies.overlapping(patch.box().grown(coincidence))) {
      Region above = part.solid().section(patch.plane(), coincidence, SectionSide.ABOVE, window).intersect(patch.region());
      Region covered = part.element().category() == Category.WALL || part.element().category() == Category.ROOF ? above : above.filled();
      if (covered.area() > all.tops().speckM2()) {
        on.add(covered);
        tally.by.add(part.id());
      }
    }
    return Region.unionOf(on);
  }

  /** Steep against a larger surface of the same element, and no wider than a slab is deep. */
  private boolean isCutEdge(Element e, Patch patch) {
    double cosine = Math.cos(Math.toRadians(all.tops().cutEdgeDegrees()));
    return patch.region().isNarrowerThan(limits.edgeM()) && byElement.get(e.globalId()).stream()
        .anyMatch(o -> Math.abs(o.plane().normal().dot(patch.plane().normal())) < cosine && o.region().area() > patch.region().area());
  }

  private enum Reason {
    FACE, COVERED, LAYER, ENCLOSED, VOID, EDGE, SMALL, LOST
  }

  /** Adds up. */
  private static final class Tally {
    private final double[] sums = new double[Reason.values().length];
    private final Set<String> by = new TreeSet<>(Comparator.naturalOrder());
    private double upward;

    void add(Reason reason, double areaM2) {
      sums[reason.ordinal()] += areaM2;
    }

    /** Books what a reason takes of a region; what is left of it. */
    Region take(Reason reason, Region region, Region taken) {
      Region left = region.minus(taken);
      add(reason, region.area() - left.area());
      return left;
    }

    private double sum(Reason reason) {
      return sums[reason.ordinal()];
    }

    ElementCoverage result(String id, boolean readable) {
      return new ElementCoverage(id, upward, sum(Reason.FACE), sum(Reason.COVERED), List.copyOf(by), sum(Reason.LAYER),
          sum(Reason.ENCLOSED), sum(Reason.VOID), sum(Reason.EDGE), sum(Reason.SMALL), sum(Reason.LOST), readable);
    }
  }
}
