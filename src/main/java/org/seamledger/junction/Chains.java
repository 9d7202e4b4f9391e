package org.seamledger.junction;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.BoundaryEdge;
import org.seamledger.roof.Contact;
import org.seamledger.roof.Roof;

/**
 * Joins stretches of outline against the same thing to lines: those that adjoin and are collinear, or, along a curved face, nearly so. Tiny
 * stretches have no direction and join either way; those of a curved face have one as long as their ends are told apart, for its facets may
 * be as narrow.
 */
final class Chains {

  private final Roof roof;
  private final double tinyM;
  private final double shortM;

  Chains(Roof roof) {
    this.roof = roof;
    this.tinyM = roof.limits().stretches().tinyM();
    this.shortM = roof.limits().stretches().shortM();
  }

  /** The lines, each from end to end. */
  List<List<BoundaryEdge>> of(List<BoundaryEdge> group) {
    List<BoundaryEdge> rest = new ArrayList<>(group);
    // Long stretches first: tiny ones then join them, and not each other.
    rest.sort(Comparator.comparing((BoundaryEdge e) -> !hasDirection(e)));
    List<List<BoundaryEdge>> chains = new ArrayList<>();
    while (!rest.isEmpty()) {
      List<BoundaryEdge> chain = new ArrayList<>(List.of(rest.remove(0)));
      int next = next(chain, rest);
      while (next >= 0) {
        BoundaryEdge e = rest.remove(next);
        chain.add(goesOn(chain, e) ? chain.size() : 0, e);
        next = next(chain, rest);
      }
      rest.removeIf(e -> e.lengthM() < tinyM && isBetween(chain, e));
      chains.add(chain);
    }
    return chains;
  }

  /** Number of the stretch of the rest that goes on at either end of the chain, the one that begins nearest, or -1. */
  private int next(List<BoundaryEdge> chain, List<BoundaryEdge> rest) {
    int next = -1;
    double nearest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < rest.size() && nearest > 0; i++) {
      BoundaryEdge e = rest.get(i);
      double away = goesOn(chain, e) ? distance(chain.get(chain.size() - 1), e)
          : adjoins(e, chain.get(0)) && turnsLittle(e, firstLong(chain)) ? distance(e, chain.get(0)) : Double.POSITIVE_INFINITY;
      if (away < nearest) {
        next = i;
        nearest = away;
      }
    }
    return next;
  }

  /** Puts a tiny stretch where it fills the joint between two stretches of the chain; whether there is such a joint. */
  private boolean isBetween(List<BoundaryEdge> chain, BoundaryEdge e) {
    for (int i = 0; i + 1 < chain.size(); i++) {
      if (adjoins(chain.get(i), e) && adjoins(e, chain.get(i + 1))) {
        chain.add(i + 1, e);
        return true;
      }
    }
    return false;
  }

  private boolean goesOn(List<BoundaryEdge> chain, BoundaryEdge e) {
    return adjoins(chain.get(chain.size() - 1), e) && turnsLittle(lastLong(chain), e);
  }

  private BoundaryEdge firstLong(List<BoundaryEdge> chain) {
    return chain.stream().filter(this::hasDirection).findFirst().orElse(chain.get(0));
  }

  private BoundaryEdge lastLong(List<BoundaryEdge> chain) {
    List<BoundaryEdge> turned = new ArrayList<>(chain);
    Collections.reverse(turned);
    return firstLong(turned);
  }

  private boolean adjoins(BoundaryEdge a, BoundaryEdge b) {
    return distance(a, b) <= tinyM;
  }

  private static double distance(BoundaryEdge a, BoundaryEdge b) {
    return a.to().distance(b.from());
  }

  private boolean hasDirection(BoundaryEdge e) {
    return e.lengthM() >= (roof.face(e.facet()).isCurved() ? shortM : tinyM);
  }

  private boolean turnsLittle(BoundaryEdge a, BoundaryEdge b) {
    if (LineFacts.isRound(a.contact()) || !hasDirection(a) || !hasDirection(b)) {
      return true;
    }
    Vec3 d = a.to().minus(a.from());
    Vec3 e = b.to().minus(b.from());
    double turn = Math.atan2(d.cross(e).length(), d.dot(e));
    // Where facets turn by some angle, the lines in which they meet other surfaces may turn by twice that.
    double limit = roof.face(a.facet()).isCurved() || otherIsCurved(a)
        ? Math.toRadians(2 * roof.tolerance().facetTurnDegrees()) : Math.toRadians(roof.limits().lines().collinearDegrees());
    return turn <= limit;
  }

  private boolean otherIsCurved(BoundaryEdge e) {
    return e.contact() instanceof Contact.OtherFacet other && roof.face(other.facet()).isCurved();
  }
}
