package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.element.Opening;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Solid;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;

/** Openings of elements and what fills them. */
public final class Holes {

  /** Openings whose plan boxes differ by less than this (metres) are one opening modelled twice. */
  private static final double SAME = 0.02;

  private Holes() {
  }

  /**
   * Openings of an element and of those of its wholes that have no body of their own. Where a whole's filled opening and a part's
   * unfilled one are the same hole, the filled one stays.
   */
  public static List<Opening> of(Scope scope, long element, java.util.function.LongPredicate hasBody) {
    List<Opening> all = new ArrayList<>(own(scope, element, true));
    for (long whole : scope.relations().ancestors(element)) {
      if (hasBody.test(whole)) {
        break;
      }
      all.addAll(own(scope, whole, true));
    }
    List<Opening> kept = new ArrayList<>();
    for (Opening o : all) {
      if (o.isFilled() || all.stream().noneMatch(f -> f.isFilled() && sameHole(o, f))) {
        kept.add(o);
      }
    }
    kept.sort(java.util.Comparator.comparing(Opening::globalId));
    return kept;
  }

  private static boolean sameHole(Opening a, Opening b) {
    Box3 p = Shapes.bounds(a.body());
    Box3 q = Shapes.bounds(b.body());
    return p.overlaps(q.grown(SAME)) && Math.abs(p.minX() - q.minX()) < SAME && Math.abs(p.minY() - q.minY()) < SAME
        && Math.abs(p.maxX() - q.maxX()) < SAME && Math.abs(p.maxY() - q.maxY()) < SAME;
  }

  /** Openings of an element that nothing fills. */
  static List<Opening> unfilled(Scope scope, long element) {
    List<Opening> openings = own(scope, element, false);
    openings.sort(java.util.Comparator.comparing(Opening::globalId));
    return openings;
  }

  private static List<Opening> own(Scope scope, long element, boolean filledToo) {
    List<Opening> openings = new ArrayList<>();
    for (long id : scope.relations().openings(element)) {
      if (!filledToo && !scope.relations().fillings(id).isEmpty()) {
        continue;
      }
      try {
        Entity opening = scope.model().get(id);
        List<Solid> body = scope.shapes().body(opening);
        if (!body.isEmpty()) {
          openings.add(opening(scope, opening, body));
        }
      } catch (EntityProblem p) {
        scope.model().findings().add(p, "An opening of " + Shapes.name(scope.model().get(element)));
      }
    }
    return openings;
  }

  private static Opening opening(Scope scope, Entity opening, List<Solid> body) {
    for (long filling : scope.relations().fillings(opening.id())) {
      Entity e = scope.model().get(filling);
      ElementClass c = ElementClass.of(e.keyword());
      return new Opening(opening.text(0), body, e.text(0), c == null ? e.keyword() : c.name());
    }
    return new Opening(opening.text(0), body, "", "");
  }
}
