package org.seamledger.export.submittal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.order.OrderList;
import org.seamledger.order.PricedOrder;
import org.seamledger.takeoff.Takeoff;

/**
 * What all parts of a submittal are written from.
 *
 * @param details the junctions of each detail in use, the longest first; no entry for those that have no detail
 * @param places where the rows of junctions and nodes stand, by id
 */
record SubmittalContent(Takeoff takeoff, SubmittalSetup setup, SheetFrame frame, OrderList order, Optional<PricedOrder> priced,
    SortedMap<String, List<DetailedJunction>> details, Map<String, String> places) {

  static SubmittalContent of(Takeoff takeoff, SubmittalSetup setup) {
    OrderList order = OrderList.of(takeoff);
    SortedMap<String, List<DetailedJunction>> details = new TreeMap<>();
    Comparator<DetailedJunction> longestFirst = Comparator.comparingDouble(j -> -j.junction().junction().lengthM());
    takeoff.lines().stream().filter(j -> !j.detail().equals(Detail.NONE))
        .sorted(longestFirst.thenComparing(SubmittalContent::id))
        .forEach(j -> details.computeIfAbsent(j.detail().id(), id -> new ArrayList<>()).add(j));
    Map<String, String> places = new HashMap<>();
    takeoff.lines().forEach(j -> places.put(id(j), "junction-" + id(j)));
    takeoff.nodes().forEach(n -> places.put(n.id(), "node-" + n.id()));
    return new SubmittalContent(takeoff, setup, new SheetFrame(takeoff, setup.sheets()), order,
        setup.prices().map(p -> PricedOrder.of(order, p)), details, places);
  }

  static String id(DetailedJunction junction) {
    return junction.junction().junction().id();
  }

  DrawingUnits units() {
    return setup.sheets().units();
  }

  boolean has(PageSet set) {
    return setup.pages().contains(set);
  }

  /** What the submittal is called. */
  String title() {
    return title("roof submittal");
  }

  /** What a document of the project is called. */
  String title(String document) {
    String project = setup.sheets().title().project();
    String models = Sheet.models(takeoff);
    return (project.isEmpty() ? models : project) + ": " + document;
  }

  static String place(PageSet set) {
    return "part-" + set.word();
  }

  static String detailPlace(String id) {
    return "detail-" + id;
  }

  static String nodeKindPlace(String kind) {
    return "node-kind-" + kind;
  }

  static String findingPlace(String code) {
    return "finding-" + code;
  }

  /** A link to a place of a part; words alone where that part isn't asked for. */
  void link(PageSet set, String place, String words, FoWriter fo) {
    if (has(set) && !words.isBlank()) {
      fo.link(place, words, "color", "#0b4f8a");
    } else {
      fo.text(words);
    }
  }

  /** An id of a junction or node, which leads to its row of the schedule. */
  void place(String id, FoWriter fo) {
    String place = places.get(id);
    if (place == null) {
      fo.text(id);
    } else {
      link(PageSet.SCHEDULE, place, id, fo);
    }
  }

  /** Ids that lead to their rows, between spaces. */
  void places(List<String> ids, FoWriter fo) {
    for (int i = 0; i < ids.size(); i++) {
      fo.text(i == 0 ? "" : " ");
      place(ids.get(i), fo);
    }
  }
}
