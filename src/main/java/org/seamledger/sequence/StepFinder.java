package org.seamledger.sequence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.seamledger.detail.Detail;
import org.seamledger.detail.Fastening;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.Seal;
import org.seamledger.node.KindedNode;
import org.seamledger.quantity.ClosureCut;
import org.seamledger.quantity.FixedPanel;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.Quantities;
import org.seamledger.quantity.layout.Panel;
import org.seamledger.quantity.layout.Seam;

/** Makes the steps: of faces, of lines by the parts of their details, of nodes by their pieces. */
final class StepFinder {

  private final RoofPlaces places;
  private final Quantities quantities;
  private final WorkRules rules;
  private final StepTable table = new StepTable();
  /** Area of the panels of a face that are laid in steps at lines. */
  private final Map<String, Double> apartM2 = new HashMap<>();
  /** What the rules said, by the places and the part: few of each, on however many places. */
  private final Map<PlaceFacts, Map<String, List<Work>>> known = new HashMap<>();
  private final Map<String, PlaceFacts> ofNodes = new HashMap<>();

  private final PlaceFacts panelled = new PlaceFacts(Map.of("place", "face", "panelled", true));
  private final PlaceFacts bare = new PlaceFacts(Map.of("place", "face", "panelled", false));

  private StepFinder(RoofPlaces places, Quantities quantities, WorkRules rules) {
    this.places = places;
    this.quantities = quantities;
    this.rules = rules;
  }

  /** The steps of all places, still without their panels and amounts. */
  static StepFinder find(RoofPlaces places, Quantities quantities, WorkRules rules) {
    StepFinder finder = new StepFinder(places, quantities, rules);
    places.lines().keySet().stream().filter(places::hasDetail).forEach(finder::line);
    places.nodes().values().forEach(finder::node);
    places.faces().keySet().forEach(finder::face);
    return finder;
  }

  StepTable table() {
    return table;
  }

  /** Gives the steps the panels that are laid in them, and how much there is to do in each; once. */
  void measure() {
    panels();
    table.all().forEach(this::amount);
  }

  private void face(String id) {
    PlaceFacts facts = places.panelled().get(id) ? panelled : bare;
    works(facts, "").forEach(w -> table.at(id, w));
  }

  private void line(String id) {
    Detail detail = places.lines().get(id).detail();
    PlaceFacts facts = places.lineFacts(id);
    works(facts, "").forEach(w -> table.at(id, w));
    JunctionQuantities taken = quantities.byJunction().get(id);
    // What may belong to several works, such as a plate under what is fastened to it, goes to that which the other parts make.
    List<MetalPart> metal = detail.metal().stream().sorted(Comparator.comparingInt(m -> works(facts, m.id()).size())).toList();
    for (MetalPart m : metal) {
      attach(id, facts, m.id(), step -> step.addMetal(some(taken.metal(), l -> l.part().equals(m.part()))));
    }
    Set<String> seals = new HashSet<>();
    for (Seal s : detail.seals()) {
      String part = s.part().isEmpty() ? s.id() : s.part();
      attach(id, facts, part, step -> {
        if (seals.add(s.place())) {
          step.addSeals(some(taken.seals(), l -> l.place().equals(s.place())));
        }
      });
    }
    Set<String> rows = new HashSet<>();
    for (Fastening f : detail.fastenings()) {
      attach(id, facts, f.id(), step -> {
        if (rows.add(f.id())) {
          step.addFasteners(some(taken.fasteners(), r -> r.id().equals(f.id())));
        }
      });
    }
  }

  private static <T> List<T> some(List<T> all, Predicate<T> which) {
    List<T> some = new ArrayList<>(all.size());
    for (T each : all) {
      if (which.test(each)) {
        some.add(each);
      }
    }
    return List.copyOf(some);
  }

  private void attach(String place, PlaceFacts facts, String part, Consumer<StepTable.Draft> to) {
    StepTable.Draft step = step(place, facts, part);
    if (step != null) {
      to.accept(step);
    }
  }

  private StepTable.Draft step(String place, PlaceFacts facts, String part) {
    return table.atFirst(place, works(facts, part));
  }

  /** @param part none where it is empty */
  private List<Work> works(PlaceFacts facts, String part) {
    return known.computeIfAbsent(facts, f -> new HashMap<>()).computeIfAbsent(part, p -> {
      Map<String, Object> of = facts.copy();
      if (!p.isEmpty()) {
        of.put("part", p);
      }
      return rules.of(of);
    });
  }

  private void node(KindedNode node) {
    JunctionQuantities taken = quantities.byJunction().get(node.id());
    if (taken == null || taken.metal().isEmpty()) {
      return;
    }
    PlaceFacts facts =
        ofNodes.computeIfAbsent(node.kind().id(), kind -> new PlaceFacts(Map.of("place", "node", "nodeKind", kind)));
    node.kind().content().parts().stream().filter(p -> p.count(node.facts()) > 0).forEach(p -> {
      StepTable.Draft step = step(node.id(), facts, p.id());
      if (step != null && step.metal().isEmpty()) {
        step.addMetal(taken.metal());
        step.addSeals(taken.seals());
        step.addFasteners(taken.fasteners());
      }
    });
  }

  /** Each panel is laid once: below a joint, above a penetration, or with the others of its face. */
  private void panels() {
    for (FixedPanel p : quantities.fixity().panels()) {
      StepTable.Draft apart = at(p.high().junctions(), Work.Per.LOWER_AREA);
      apart = apart != null ? apart : at(p.low().junctions(), Work.Per.UPPER_AREA);
      if (apart != null) {
        apart.add(p.panel());
        apartM2.merge(p.face(), p.panel().areaM2(), Double::sum);
      } else {
        StepTable.Draft own = first(p.face(), d -> d.work.rate() == Rate.PANELS);
        if (own != null) {
          own.add(p.panel());
        }
      }
    }
  }

  private StepTable.Draft at(List<String> lines, Work.Per per) {
    for (String line : lines) {
      StepTable.Draft step = first(line, d -> d.work.per() == per);
      if (step != null) {
        return step;
      }
    }
    return null;
  }

  private StepTable.Draft first(String place, Predicate<StepTable.Draft> which) {
    for (StepTable.Draft d : table.at(place)) {
      if (which.test(d)) {
        return d;
      }
    }
    return null;
  }

  private void amount(StepTable.Draft step) {
    step.amount = switch (step.work.per()) {
      case FACE_AREA -> faceArea(step);
      case SEAMS -> quantities.layout().face(step.place).seams().stream().mapToDouble(Seam::lengthM).sum();
      case LINE -> places.lines().get(step.place).junction().junction().lengthM();
      case CLOSURES -> quantities.byJunction().get(step.place).closures().stream().mapToDouble(StepFinder::length).sum();
      case UPPER_AREA, LOWER_AREA -> step.panels().stream().mapToDouble(Panel::areaM2).sum();
      case EACH -> Math.max(1, step.metal().stream().mapToInt(MetalLine::pieces).sum());
    };
  }

  /** The underlayment lies under all panels; those that are laid in steps at lines count there. */
  private double faceArea(StepTable.Draft step) {
    double area = places.faces().get(step.place).areaM2();
    return step.work.rate() == Rate.PANELS ? Math.max(0, area - apartM2.getOrDefault(step.place, 0.0)) : area;
  }

  private static double length(ClosureCut cut) {
    return cut.count() * cut.lengthM();
  }

  /** Sorted, each once. */
  static List<String> ids(List<StepTable.Draft> steps) {
    return steps.size() < 2 ? steps.stream().map(StepTable.Draft::id).toList()
        : steps.stream().map(StepTable.Draft::id).sorted().distinct().toList();
  }
}
