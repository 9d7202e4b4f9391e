package org.seamledger.sequence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.detail.HoldPoint;
import org.seamledger.detail.Seal;
import org.seamledger.node.KindedNode;

/** Hold points of lines and nodes with the steps that wait for them. */
final class HoldPointPlaces {

  private static final String CHECK =
      "whoever signs has looked at each bead along its whole length, to the top of its upright ends: continuous,"
          + " in touch with both sides, nothing slumped, sagged or washed out, skin formed where the sealant forms one; tape without a gap"
          + " under the fasteners, closures tight at the seams, corner plugs in place";
  private static final String IF_FAILS = "Cut out what has slumped or does not stick, clean and dry the place, gun it anew, let it stand as"
      + " long again, and look once more. Do not cover it.";

  private static final List<String> CASES = List.of("-above", "-under", "-over");

  private final RoofPlaces places;
  private final StepTable table;
  /** By what must not be done before. */
  private final Map<String, String> words = new HashMap<>();

  private HoldPointPlaces(RoofPlaces places, StepTable table) {
    this.places = places;
    this.table = table;
  }

  static SortedMap<String, List<PlacedHoldPoint>> of(RoofPlaces places, StepTable table) {
    HoldPointPlaces finder = new HoldPointPlaces(places, table);
    SortedMap<String, List<PlacedHoldPoint>> all = new TreeMap<>();
    places.lines().forEach((id, line) -> all.put(id, finder.sorted(id, line.detail().holdPoints())));
    places.nodes().forEach((id, node) -> all.put(id, finder.sorted(id, node.kind().content().holdPoints())));
    return all;
  }

  /** In the order of the work that waits; what nothing waits for comes last. */
  private List<PlacedHoldPoint> sorted(String place, List<HoldPoint> points) {
    List<PlacedHoldPoint> placed = new ArrayList<>(points.size() + 1);
    List<Integer> orders = new ArrayList<>(points.size() + 1);
    for (int i = 0; i < points.size(); i++) {
      HoldPoint point = points.get(i);
      List<StepTable.Draft> waiting = waiting(place, point.step());
      add(waiting.stream().mapToInt(d -> d.work.order()).min().orElse(Integer.MAX_VALUE),
          new PlacedHoldPoint(place + "/" + word(points, i), point.before(), point.check(), point.ifFails(), StepFinder.ids(waiting), ""),
          placed, orders);
    }
    StepTable.Draft covering = covering(place);
    if (covering != null) {
      add(covering.work.order(), new PlacedHoldPoint(place + "/" + PlacedHoldPoint.RECHECK, covering.work.label() + " covers the beads",
          CHECK, IF_FAILS, List.of(covering.id()), covering.id()), placed, orders);
    }
    return placed;
  }

  /** Behind all of the same order. */
  private static void add(int order, PlacedHoldPoint point, List<PlacedHoldPoint> placed, List<Integer> orders) {
    int i = orders.size();
    while (i > 0 && orders.get(i - 1) > order) {
      i--;
    }
    placed.add(i, point);
    orders.add(i, order);
  }

  /** By which a point is known at its place: its words, and a number from the second of the same words on. */
  private String word(List<HoldPoint> points, int i) {
    String own = words.computeIfAbsent(points.get(i).before(), b -> "before-" + PlacedHoldPoint.slug(b));
    int nth = 1;
    for (int before = 0; before < i; before++) {
      nth += words.get(points.get(before).before()).equals(own) ? 1 : 0;
    }
    return nth == 1 ? own : own + "-" + nth;
  }

  /** The step that buries concealed beads of a place: the first that must come after the one that guns them; null where none does. */
  private StepTable.Draft covering(String place) {
    if (!places.lines().containsKey(place)) {
      return null;
    }
    for (StepTable.Draft gunned : table.at(place)) {
      if (gunned.seals().stream().anyMatch(s -> s.form() == Seal.Form.BEAD && s.exposure() == Seal.Exposure.CONCEALED)) {
        for (StepTable.Draft d : table.at(place)) {
          if (d.work.per() == Work.Per.LINE && d.work.rate() == Rate.COVER && d.work.compareTo(gunned.work) > 0
              && d.after().contains(gunned)) {
            return d;
          }
        }
      }
    }
    return null;
  }

  private List<StepTable.Draft> waiting(String place, String work) {
    if (work.isEmpty()) {
      return List.of();
    }
    List<StepTable.Draft> own = own(place, work);
    if (!own.isEmpty()) {
      return own;
    }
    KindedNode node = places.nodes().get(place);
    if (node == null) {
      Map<String, RoofPlaces.Side> sides = places.sides().get(place);
      boolean isAbove = sides.containsValue(RoofPlaces.Side.ABOVE);
      return sides.entrySet().stream().filter(e -> !isAbove || e.getValue() == RoofPlaces.Side.ABOVE)
          .flatMap(e -> table.named(e.getKey(), work).stream()).toList();
    }
    List<StepTable.Draft> ofLines = new ArrayList<>();
    node.node().leaving().forEach(end -> ofLines.addAll(own(end.junction().id(), work)));
    if (ofLines.isEmpty()) {
      node.node().faces().forEach(f -> ofLines.addAll(table.named(f, work)));
    }
    return ofLines;
  }

  /** Steps of a place that a word stands for: its own, those that are a case of it ({@code panels-above}, {@code corner-under}). */
  private List<StepTable.Draft> own(String place, String work) {
    List<StepTable.Draft> steps = table.named(place, work);
    if (steps.isEmpty()) {
      for (String end : CASES) {
        steps.addAll(table.named(place, work + end));
      }
    }
    return steps;
  }
}
