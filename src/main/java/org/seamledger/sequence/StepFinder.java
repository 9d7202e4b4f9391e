package org.seamledger.sequence;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
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
import org.seamledger.quantity.layout.Seam;

/** Makes the steps: of faces, of lines by the parts of their details, of nodes by their pieces. */
final class StepFinder {

  private final RoofPlaces places;
  private final Quantities quantities;
  private final WorkRules rules;
  private final StepTable table = new StepTable();
  private final Map<String, Double> upperAreaM2 = new TreeMap<>();
  private final Map<String, Double> upperOfFaceM2 = new TreeMap<>();

  private StepFinder(RoofPlaces places, Quantities quantities, WorkRules rules) {
    this.places = places;
    this.quantities = quantities;
    this.rules = rules;
  }

  static StepTable find(RoofPlaces places, Quantities quantities, WorkRules rules) {
    StepFinder finder = new StepFinder(places, quantities, rules);
    places.lines().keySet().stream().filter(places::hasDetail).forEach(finder::line);
    places.nodes().values().forEach(finder::node);
    finder.upperPanels();
    places.faces().keySet().forEach(finder::face);
    finder.table.all().forEach(finder::amount);
    return finder.table;
  }

  private void face(String id) {
    Map<String, Object> facts = Map.of("place", "face", "panelled", places.panelled().get(id));
    rules.of(facts).forEach(w -> table.at(id, w));
  }

  private void line(String id) {
    Detail detail = places.lines().get(id).detail();
    Map<String, Object> facts = places.lineFacts(id);
    rules.of(facts).forEach(w -> table.at(id, w));
    JunctionQuantities taken = quantities.byJunction().get(id);
    Map<String, String> parts = new TreeMap<>();
    for (MetalPart m : detail.metal()) {
      StepTable.Draft step = step(id, facts, m.id());
      parts.put(m.part(), m.id());
      taken.metal().stream().filter(l -> step != null && l.part().equals(m.part())).forEach(l -> step.metal.add(l));
    }
    Set<String> seals = new LinkedHashSet<>();
    for (Seal s : detail.seals()) {
      String part = s.part().isEmpty() ? s.id() : s.part();
      attach(id, facts, part, step -> {
        if (seals.add(s.place())) {
          taken.seals().stream().filter(l -> l.place().equals(s.place())).forEach(l -> step.seals.add(l));
        }
      });
    }
    Set<String> rows = new LinkedHashSet<>();
    for (Fastening f : detail.fastenings()) {
      attach(id, facts, f.id(), step -> {
        if (rows.add(f.id())) {
          taken.fasteners().stream().filter(r -> r.id().equals(f.id())).forEach(r -> step.fasteners.add(r));
        }
      });
    }
  }

  private void attach(String place, Map<String, Object> facts, String part, Consumer<StepTable.Draft> to) {
    StepTable.Draft step = step(place, facts, part);
    if (step != null) {
      to.accept(step);
    }
  }

  private StepTable.Draft step(String place, Map<String, Object> facts, String part) {
    Map<String, Object> of = new TreeMap<>(facts);
    of.put("part", part);
    return table.atFirst(place, rules.of(of));
  }

  private void node(KindedNode node) {
    JunctionQuantities taken = quantities.byJunction().get(node.id());
    if (taken == null || taken.metal().isEmpty()) {
      return;
    }
    Map<String, Object> facts = Map.of("place", "node", "nodeKind", node.kind().id());
    node.kind().content().parts().stream().filter(p -> p.count(node.facts()) > 0).forEach(p -> {
      StepTable.Draft step = step(node.id(), facts, p.id());
      if (step != null && step.metal.isEmpty()) {
        step.metal.addAll(taken.metal());
        step.seals.addAll(taken.seals());
        step.fasteners.addAll(taken.fasteners());
      }
    });
  }

  /** Area of the panels whose low end is a line where they come later than the others of their face. */
  private void upperPanels() {
    for (FixedPanel p : quantities.fixity().panels()) {
      p.low().junctions().stream().filter(j -> table.at(j).stream().anyMatch(d -> d.work.per() == Work.Per.UPPER_AREA)).findFirst()
          .ifPresent(j -> {
            upperAreaM2.merge(j, p.panel().areaM2(), Double::sum);
            upperOfFaceM2.merge(p.face(), p.panel().areaM2(), Double::sum);
          });
    }
  }

  private void amount(StepTable.Draft step) {
    step.amount = switch (step.work.per()) {
      case FACE_AREA -> faceArea(step);
      case SEAMS -> quantities.layout().face(step.place).seams().stream().mapToDouble(Seam::lengthM).sum();
      case LINE -> places.lines().get(step.place).junction().junction().lengthM();
      case CLOSURES -> quantities.byJunction().get(step.place).closures().stream().mapToDouble(StepFinder::length).sum();
      case UPPER_AREA -> upperAreaM2.getOrDefault(step.place, 0.0);
      case EACH -> Math.max(1, new ArrayList<>(step.metal).stream().mapToInt(MetalLine::pieces).sum());
    };
  }

  /** The underlayment lies under all panels; panels above a penetration are counted there. */
  private double faceArea(StepTable.Draft step) {
    double area = places.faces().get(step.place).areaM2();
    return step.work.rate() == Rate.PANELS ? Math.max(0, area - upperOfFaceM2.getOrDefault(step.place, 0.0)) : area;
  }

  private static double length(ClosureCut cut) {
    return cut.count() * cut.lengthM();
  }

  static List<String> ids(List<StepTable.Draft> steps) {
    return steps.stream().map(StepTable.Draft::id).sorted().distinct().toList();
  }
}
