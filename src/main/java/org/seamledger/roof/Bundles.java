package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.Region;

/**
 * What goes through the roof as one thing: the segments and fittings of one pipe, and the insulation round it. The outermost line counts,
 * because the flashing has to go round all of it; the name is that of the pipe or duct, never that of its insulation.
 */
final class Bundles {

  private static final double OVERLAP = 0.5;
  private static final double NESTED = 1.02;

  private Bundles() {
  }

  /** The obstacles with services that share their place joined, in the order of the first of each. */
  static List<Obstacle> joined(List<Obstacle> found) {
    List<Obstacle> rest = new ArrayList<>(found);
    List<Obstacle> all = new ArrayList<>();
    while (!rest.isEmpty()) {
      List<Obstacle> bundle = new ArrayList<>(List.of(rest.remove(0)));
      for (int i = 0; i < bundle.size(); i++) {
        Obstacle one = bundle.get(i);
        rest.removeIf(o -> shareAPlace(one, o) && bundle.add(o));
      }
      all.addAll(bundle.stream().anyMatch(o -> o.passage().service()) && bundle.size() > 1 ? List.of(one(bundle)) : bundle);
    }
    return all;
  }

  private static boolean shareAPlace(Obstacle a, Obstacle b) {
    return isPart(a) && isPart(b) && (a.passage().service() || b.passage().service())
        && a.footprint().intersect(b.footprint()).area() > OVERLAP * Math.min(a.footprint().area(), b.footprint().area());
  }

  private static boolean isPart(Obstacle o) {
    return o.kind() == Obstacle.Kind.PENETRATION && (o.passage().service() || o.ifcClass().equals("IfcCovering"));
  }

  private static Obstacle one(List<Obstacle> bundle) {
    List<Obstacle> bySize = bundle.stream().sorted(Comparator.comparingDouble((Obstacle o) -> -o.footprint().area())
        .thenComparing(Obstacle::globalId)).toList();
    Obstacle outer = bySize.get(0);
    Obstacle named = bySize.stream().filter(o -> o.passage().service()).findFirst().orElseThrow();
    Region union = Region.unionOf(bundle.stream().map(Obstacle::footprint).toList());
    Region footprint = union.area() <= NESTED * outer.footprint().area() ? outer.footprint() : union;
    return new Obstacle(Obstacle.Kind.PENETRATION, named.globalId(), named.ifcClass(), footprint,
        bundle.stream().mapToDouble(Obstacle::heightM).max().orElseThrow(), RoundOutline.of(footprint).isRound(), named.passage());
  }
}
