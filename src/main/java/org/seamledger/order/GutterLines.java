package org.seamledger.order;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.Vec3;
import org.seamledger.order.stock.RunPieces;
import org.seamledger.order.stock.StockPlan;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.system.GutterSettings;

/** Hung gutters along eaves: counted, not sized. */
final class GutterLines {

  /** Eaves whose ends are this near share a corner piece, metres. */
  private static final double CORNER = 0.05;

  private final RoofSystem system;
  private final List<DetailedJunction> eaves;

  private GutterLines(OrderSource source) {
    this.system = source.system();
    this.eaves = source.takeoff().detailed().stream().filter(j -> j.junction().type().family() == Kind.Family.EDGE
        && j.junction().type().water() == Kind.Water.OVER && j.junction().type().line() == Kind.Line.EAVE
        && j.junction().junction().lengthM() > 0).toList();
  }

  static List<OrderLine> of(OrderSource source) {
    GutterLines lines = new GutterLines(source);
    return lines.eaves.isEmpty() || !source.system().purchase().gutters().hung() ? List.of() : lines.lines();
  }

  private List<OrderLine> lines() {
    GutterSettings gutters = system.purchase().gutters();
    LineDraft gutter = draft("gutter", "gutter", "m");
    LineDraft outlets = draft("gutter-outlet", "gutter outlets", "piece");
    LineDraft hangers = draft("gutter-hanger", "gutter hangers", "piece");
    List<Double> pieces = new ArrayList<>();
    for (DetailedJunction j : eaves) {
      String id = j.junction().junction().id();
      double length = j.junction().junction().lengthM();
      gutter.add(id, "", length);
      pieces.addAll(RunPieces.of(length, system.flashing().length().value(), 0, system.purchase().stock().leastPiece().value()));
      outlets.add(id, "", Math.ceil(length / gutters.outletSpacing().value() - 1e-6));
      hangers.add(id, "", Math.ceil(length / gutters.hangerSpacing().value() - 1e-6) + 1);
    }
    StockPlan plan = StockPlan.of(pieces, system.flashing().length().value(), system.purchase().stock().leastPiece().value(), 0);
    gutter.step(plan.bars().size() + " stock lengths, no plan needs fewer than " + plan.bound());
    outlets.step("one for each " + gutters.outletSpacing() + " of an eave or part of it");
    hangers.step("at most " + gutters.hangerSpacing() + " apart along each eave");
    List<OrderLine> lines = new ArrayList<>(List.of(gutter.size("lengths of " + system.flashing().length() + "; the size by the drainage")
        .inLengths(0, gutter.net(), system.flashing().length().value(), plan.bars().size()), outlets.inPacks(0, 1, "piece"),
        hangers.inPacks(0, 1, "piece")));
    ends(lines);
    return lines;
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
