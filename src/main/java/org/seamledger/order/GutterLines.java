package org.seamledger.order;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.Vec3;
import org.seamledger.measure.Measure;
import org.seamledger.order.stock.RunPieces;
import org.seamledger.order.stock.StockPlan;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.system.GutterSettings;

/** Gutters along eaves, each once: those that a detail hangs as it counts them, and at all other eaves as the roof system buys them. */
final class GutterLines {

  /** Eaves whose ends are this near share a corner piece, metres. */
  private static final double CORNER = 0.05;

  private final OrderSource source;
  private final RoofSystem system;
  private final LineDraft gutter = draft("gutter", "gutter", "m");
  private final LineDraft outlets = draft("gutter-outlet", "gutter outlets", "piece");
  private final LineDraft hangers = draft("gutter-hanger", "gutter hangers", "piece");
  private final LineDraft joints = draft("gutter-joint", "gutter expansion joints", "piece");
  private final List<Double> pieces = new ArrayList<>();
  private final List<DetailedJunction> eaves;

  private GutterLines(OrderSource source) {
    this.source = source;
    this.system = source.system();
    boolean hung = system.purchase().gutters().hung();
    this.eaves = source.takeoff().detailed().stream().filter(j -> j.junction().type().family() == Kind.Family.EDGE
        && j.junction().type().water() == Kind.Water.OVER && j.junction().type().line() == Kind.Line.EAVE
        && j.junction().junction().lengthM() > 0 && (hung || OrderSource.hasGutter(j))).toList();
  }

  static List<OrderLine> of(OrderSource source) {
    GutterLines lines = new GutterLines(source);
    return lines.eaves.isEmpty() ? List.of() : lines.lines();
  }

  private List<OrderLine> lines() {
    for (DetailedJunction j : eaves) {
      if (OrderSource.hasGutter(j)) {
        detailed(j);
      } else {
        hung(j);
      }
    }
    Measure stock = system.flashing().length();
    StockPlan plan = StockPlan.of(pieces, stock.value(), system.purchase().stock().leastPiece().value(), 0);
    gutter.step(plan.bars().size() + " stock lengths, no plan needs fewer than " + plan.bound());
    List<OrderLine> lines = new ArrayList<>(List.of(gutter.size("lengths of " + stock + "; the size by the drainage")
        .inLengths(0, gutter.net(), stock.value(), plan.bars().size())));
    for (LineDraft draft : List.of(outlets, hangers, joints)) {
      if (draft.isNeeded()) {
        lines.add(draft.inPacks(0, 1, "piece"));
      }
    }
    ends(lines);
    return lines;
  }

  private void hung(DetailedJunction eave) {
    GutterSettings gutters = system.purchase().gutters();
    String id = eave.junction().junction().id();
    double length = eave.junction().junction().lengthM();
    run(id, length, 0);
    outlets.add(id, "", Math.ceil(length / gutters.outletSpacing().value() - 1e-6));
    hangers.add(id, "", Math.ceil(length / gutters.hangerSpacing().value() - 1e-6) + 1);
    outlets.onceStep("one for each " + gutters.outletSpacing() + " of an eave or part of it");
    hangers.onceStep("at most " + gutters.hangerSpacing() + " apart along each eave");
  }

  /** As the eave's detail counts it. */
  private void detailed(DetailedJunction eave) {
    String id = eave.junction().junction().id();
    JunctionQuantities counted = source.takeoff().quantities().byJunction().get(id);
    for (MetalLine line : counted.metal()) {
      switch (source.part(counted, line.part()).id()) {
        case "gutter" -> run(id, line.lengthM(), system.flashing().lap().value());
        case "bracket" -> hangers.add(id, "", line.pieces());
        case "outlet" -> outlets.add(id, "", line.pieces());
        case "joint" -> joints.add(id, "", line.pieces());
        default -> {
          // No part of the gutter.
        }
      }
    }
  }

  private void run(String junction, double length, double lap) {
    gutter.add(junction, "", length);
    pieces.addAll(RunPieces.of(length, system.flashing().length().value(), lap, system.purchase().stock().leastPiece().value()));
  }

  private static LineDraft draft(String id, String item, String unit) {
    return new LineDraft(id, OrderGroup.DRAINAGE, item, unit);
  }

  /** Each end of an eave has an end cap, or half a corner piece. */
  private void ends(List<OrderLine> lines) {
    LineDraft caps = draft("gutter-end", "gutter end caps", "piece");
    LineDraft corners = draft("gutter-corner", "gutter corner pieces", "piece");
    for (int i = 0; i < eaves.size(); i++) {
      List<Vec3> path = eaves.get(i).junction().junction().path();
      for (Vec3 end : List.of(path.get(0), path.get(path.size() - 1))) {
        int other = meeting(i, end);
        if (other < 0) {
          caps.add(eaves.get(i).junction().junction().id(), "", 1);
        } else if (other > i) {
          corners.add(eaves.get(i).junction().junction().id(), "", 1);
        }
      }
    }
    for (LineDraft draft : List.of(caps, corners)) {
      if (draft.isNeeded()) {
        lines.add(draft.inPacks(0, 1, "piece"));
      }
    }
  }

  /** The other eave that has an end there, or −1. */
  private int meeting(int eave, Vec3 end) {
    for (int i = 0; i < eaves.size(); i++) {
      List<Vec3> path = eaves.get(i).junction().junction().path();
      if (i != eave && (path.get(0).distance(end) <= CORNER || path.get(path.size() - 1).distance(end) <= CORNER)) {
        return i;
      }
    }
    return -1;
  }
}
