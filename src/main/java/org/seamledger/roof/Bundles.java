package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.Region;
import org.seamledger.roof.Obstacle.Penetration;

/**
 * What goes through the roof as one thing: the segments and fittings of one pipe, and the insulation round it. The outermost line counts,
 * because the flashing has to go round all of it; the name is that of the pipe or duct, never that of its insulation.
 */
final class Bundles {

  private final SurfaceLimits.Penetrating limits;

  private Bundles(SurfaceLimits.Penetrating limits) {
    this.limits = limits;
  }

  /** The obstacles with services that share their place joined, in the order of the first of each. */
  static List<Obstacle> joined(List<Obstacle> found, SurfaceLimits.Penetrating limits) {
    return new Bundles(limits).joined(found);
  }

  private List<Obstacle> joined(List<Obstacle> found) {
    List<Obstacle> rest = new ArrayList<>(found);
    List<Obstacle> all = new ArrayList<>();
    while (!rest.isEmpty()) {
      Obstacle first = rest.remove(0);
      if (first instanceof Penetration p && isPart(p)) {
        all.addAll(bundled(p, rest));
      } else {
        all.add(first);
      }
    }
    return all;
  }

  /** What shares its place with the first one, directly or by others between, taken out of the rest. */
  private List<Penetration> bundled(Penetration first, List<Obstacle> rest) {
    List<Penetration> bundle = new ArrayList<>(List.of(first));
    for (int i = 0; i < bundle.size(); i++) {
      Penetration one = bundle.get(i);
      rest.removeIf(o -> o instanceof Penetration p && shareAPlace(one, p) && bundle.add(p));
    }
    return bundle.size() > 1 && bundle.stream().anyMatch(p -> p.passage().service()) ? List.of(one(bundle)) : bundle;
  }

  private boolean shareAPlace(Penetration a, Penetration b) {
    return isPart(b) && (a.passage().service() || b.passage().service())
        && a.footprint().sharesMoreThan(limits.bundleShare() * Math.min(a.footprint().area(), b.footprint().area()), b.footprint());
  }

  private static boolean isPart(Penetration p) {
    return p.passage().service() || p.ifcClass().equals("IfcCovering");
  }

  private Penetration one(List<Penetration> bundle) {
    List<Penetration> bySize = bundle.stream().sorted(Comparator.comparingDouble((Penetration p) -> -p.footprint().area())
        .thenComparing(Penetration::globalId)).toList();
    Penetration outer = bySize.get(0);
    Penetration named = bySize.stream().filter(p -> p.passage().service()).findFirst().orElseThrow();
    Region union = Region.unionOf(bundle.stream().map(Penetration::footprint).toList());
    Region footprint = union.area() <= limits.nestedShare() * outer.footprint().area() ? outer.footprint() : union;
    return new Penetration(named.globalId(), named.ifcClass(), footprint,
        bundle.stream().mapToDouble(Penetration::heightM).max().orElseThrow(), RoundOutline.isRound(footprint, limits), named.passage());
  }
}
