package org.seamledger.junction;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.NearLine;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Vec3;

/**
 * Which flashings and gutters of the model accompany which junction, and along what length. An element accompanies a line where it comes
 * within a distance of it, square to the line. What only ends at a line, as a ridge cap does at the hips, does not: a stretch of up to
 * twice the distance is left out where the element accompanies another line along more than twice that stretch.
 */
public final class ModelledFinder {

  private final double reach;
  private final Map<String, Double> longest = new HashMap<>();

  private ModelledFinder(double reach) {
    this.reach = reach;
  }

  /**
   * @param byJunction by id; no entry where nothing is modelled
   * @param findings elements that are near no junction
   */
  public record Result(SortedMap<String, Modelled> byJunction, List<Finding> findings) {

    /** Ids of the junctions with a gutter along most of their length. */
    public Set<String> gutters(List<Junction> junctions) {
      return junctions.stream().filter(j -> byJunction.getOrDefault(j.id(), Modelled.NOTHING).gutterM() > j.lengthM() / 2)
          .map(Junction::id).collect(Collectors.toCollection(TreeSet::new));
    }
  }

  /** @param reachM the distance for flashings, metres; twice that for gutters */
  public static Result find(List<Junction> junctions, List<Element> flashings, double reachM) {
    return new ModelledFinder(reachM).result(junctions, flashings);
  }

  /** Gutters hang in front of an eave and below it, so they may be twice as far. */
  private double reach(Element e) {
    return e.category() == Category.GUTTER ? 2 * reach : reach;
  }

  private Result result(List<Junction> junctions, List<Element> flashings) {
    PlanIndex<Element> index = new PlanIndex<>(flashings, e -> e.bounds().grown(reach(e)));
    SortedMap<String, SortedMap<String, Found>> all = new TreeMap<>();
    for (Junction j : junctions) {
      SortedMap<String, Found> here = along(j, index);
      here.forEach((id, f) -> longest.merge(id, f.length(), Math::max));
      all.put(j.id(), here);
    }
    SortedMap<String, Modelled> byJunction = new TreeMap<>();
    all.forEach((id, here) -> {
      here.values().removeIf(f -> isEnd(f));
      if (!here.isEmpty()) {
        byJunction.put(id, modelled(here));
      }
    });
    return new Result(byJunction, flashings.stream().filter(e -> !longest.containsKey(e.globalId())).map(this::alone).toList());
  }

  /** An element along one junction: its stretches on each straight part of the line. */
  private record Found(Element element, List<List<NearLine.Stretch>> bySegment) {
    double length() {
      return lengthOf(bySegment);
    }

    boolean gutter() {
      return element.category() == Category.GUTTER;
    }
  }

  private static double lengthOf(List<List<NearLine.Stretch>> bySegment) {
    return bySegment.stream().flatMap(List::stream).mapToDouble(NearLine.Stretch::length).sum();
  }

  private SortedMap<String, Found> along(Junction junction, PlanIndex<Element> index) {
    SortedMap<String, Found> found = new TreeMap<>();
    Box3 line = Box3.of(junction.path());
    for (Element e : index.overlapping(line)) {
      // A gutter takes the water of what is above it.
      if (e.category() == Category.GUTTER && e.bounds().minZ() > line.maxZ()) {
        continue;
      }
      List<List<NearLine.Stretch>> bySegment = new ArrayList<>();
      for (int i = 1; i < junction.path().size(); i++) {
        bySegment.add(stretches(e, junction.path().get(i - 1), junction.path().get(i)));
      }
      Found f = new Found(e, bySegment);
      if (f.length() > 0) {
        found.put(e.globalId(), f);
      }
    }
    return found;
  }

  private List<NearLine.Stretch> stretches(Element e, Vec3 a, Vec3 b) {
    List<NearLine.Stretch> all = new ArrayList<>();
    e.body().forEach(solid -> all.addAll(NearLine.of(solid, a, b, reach(e))));
    return NearLine.joined(all);
  }

  private boolean isEnd(Found f) {
    return f.length() <= 2 * reach(f.element()) && longest.get(f.element().globalId()) > 2 * f.length();
  }

  private static Modelled modelled(SortedMap<String, Found> here) {
    List<Modelled.Piece> pieces = new ArrayList<>();
    here.values().forEach(f -> pieces.add(new Modelled.Piece(f.element().globalId(), f.gutter(), f.length())));
    return new Modelled(pieces, together(here, false), together(here, true));
  }

  private static double together(SortedMap<String, Found> here, boolean gutter) {
    List<List<NearLine.Stretch>> bySegment = new ArrayList<>();
    int segments = here.values().iterator().next().bySegment().size();
    for (int i = 0; i < segments; i++) {
      List<NearLine.Stretch> all = new ArrayList<>();
      for (Found f : here.values()) {
        if (f.gutter() == gutter) {
          all.addAll(f.bySegment().get(i));
        }
      }
      bySegment.add(NearLine.joined(all));
    }
    return lengthOf(bySegment);
  }

  private Finding alone(Element e) {
    boolean gutter = e.category() == Category.GUTTER;
    return Finding.of(Code.FLASHING_ALONE, "the " + (gutter ? "gutter" : "flashing") + (e.name().isBlank() ? "" : " " + e.name().strip())
        + " comes within " + Math.round(reach(e) * 1000) + " mm of no junction", e.globalId());
  }
}
