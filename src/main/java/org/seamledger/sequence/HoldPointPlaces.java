package org.seamledger.sequence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.seamledger.detail.HoldPoint;
import org.seamledger.detail.Seal;
import org.seamledger.junction.LineEnd;
import org.seamledger.node.KindedNode;

/** Hold points of lines and nodes with the steps that wait for them. */
final class HoldPointPlaces {

  private static final String CHECK =
      "whoever signs has looked at each bead along its whole length, to the top of its upright ends: continuous,"
          + " in touch with both sides, nothing slumped, sagged or washed out, skin formed where the sealant forms one; tape without a gap"
          + " under the fasteners, closures tight at the seams, corner plugs in place";
  private static final String IF_FAILS = "Cut out what has slumped or does not stick, clean and dry the place, gun it anew, let it stand as"
      + " long again, and look once more. Do not cover it.";

  private final RoofPlaces places;
  private final StepTable table;

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
    Map<String, Integer> used = new HashMap<>();
    SortedMap<Integer, List<PlacedHoldPoint>> byOrder = new TreeMap<>();
    for (HoldPoint point : points) {
      List<StepTable.Draft> waiting = waiting(place, point.step());
      String slug = "before-" + PlacedHoldPoint.slug(point.before());
      int nth = used.merge(slug, 1, Integer::sum);
      int order = waiting.stream().mapToInt(d -> d.work.order()).min().orElse(Integer.MAX_VALUE);
      byOrder.computeIfAbsent(order, k -> new ArrayList<>()).add(new PlacedHoldPoint(place + "/" + slug + (nth == 1 ? "" : "-" + nth),
          point.before(), point.check(), point.ifFails(), StepFinder.ids(waiting), ""));
    }
    covering(place).ifPresent(d -> byOrder.computeIfAbsent(d.work.order(), k -> new ArrayList<>()).add(new PlacedHoldPoint(
        place + "/" + PlacedHoldPoint.RECHECK, d.work.label() + " covers the beads", CHECK, IF_FAILS, List.of(d.id()), d.id())));
    return byOrder.values().stream().flatMap(List::stream).toList();
  }

  /** The step that buries concealed beads of a place: the first that must come after the one that guns them. */
  private Optional<StepTable.Draft> covering(String place) {
    return table.at(place).stream()
        .filter(d -> d.seals.stream().anyMatch(s -> s.form() == Seal.Form.BEAD && s.exposure() == Seal.Exposure.CONCEALED))
        .flatMap(gunned -> table.at(place).stream().filter(d -> d.after.contains(gunned.id()) && d.work.compareTo(gunned.work) > 0
            && places.lines().containsKey(place)))
        .filter(d -> d.work.per() == Work.Per.LINE && d.work.rate() == Rate.COVER).findFirst();
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
      return places.sides().get(place).entrySet().stream().filter(e -> e.getValue() == RoofPlaces.Side.ABOVE
          || !places.sides().get(place).containsValue(RoofPlaces.Side.ABOVE)).flatMap(e -> table.named(e.getKey(), work).stream()).toList();
    }
    List<StepTable.Draft> ofLines = node.node().leaving().stream().map(LineEnd::junction)
        .flatMap(j -> own(j.id(), work).stream()).toList();
    return ofLines.isEmpty() ? node.node().faces().stream().flatMap(f -> table.named(f, work).stream()).toList() : ofLines;
  }

  /** Steps of a place that a word stands for: its own, those that are a case of it ({@code panels-above}, {@code corner-under}). */
  private List<StepTable.Draft> own(String place, String work) {
    List<StepTable.Draft> exact = table.named(place, work);
    return !exact.isEmpty() ? exact
        : Stream.of("-above", "-under", "-over").flatMap(end -> table.named(place, work + end).stream()).toList();
  }
}
