package org.seamledger.order;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.layout.Panel;
import org.seamledger.quantity.system.SnowGuardSettings;

/** Snow guards in rows above each eave, as many as the longest panel that ends there asks for. A count to buy by, no design for snow. */
final class SnowGuardLines {

  /** Quotients this little above a whole number are that number. */
  private static final double SLACK = 1e-6;

  private SnowGuardLines() {
  }

  static List<OrderLine> of(OrderSource source) {
    SnowGuardSettings guards = source.system().purchase().snowGuards();
    LineDraft draft = new LineDraft("snow-guard", OrderGroup.SUNDRIES, "snow guards", "piece");
    TreeMap<String, List<String>> rows = new TreeMap<>();
    if (guards.ordered()) {
      source.junctions().values().stream().filter(SnowGuardLines::isEave)
          .forEach(eave -> eave.junction().junction().faces().forEach(face -> add(source, eave.junction().junction(), face, draft, rows)));
    }
    if (!draft.isNeeded()) {
      return List.of();
    }
    draft.step(
        "a row for each " + guards.slopePerRow() + " of the longest panel or part of it, guards at most " + guards.spacing() + " apart");
    rows.forEach((step, eaves) -> draft.step((eaves.size() == 1 ? "" : eaves.size() + " eaves, each ") + step));
    draft.step("load and layout are the maker's and the licensed engineer's");
    return List.of(draft.size("for seams of " + source.system().panel().seamHeight()).inPacks(0, 1, "piece"));
  }

  private static boolean isEave(DetailedJunction junction) {
    Kind kind = junction.junction().type();
    return kind.family() == Kind.Family.EDGE && kind.water() == Kind.Water.OVER && kind.line() == Kind.Line.EAVE;
  }

  private static void add(OrderSource source, Junction eave, String face, LineDraft draft, TreeMap<String, List<String>> rows) {
    SnowGuardSettings guards = source.system().purchase().snowGuards();
    double longest = source.takeoff().quantities().layout().face(face).panels().stream()
        .filter(p -> PanelLines.endsAt(p, eave)).mapToDouble(Panel::lengthM).max().orElse(0);
    long count = (long) Math.ceil(longest / guards.slopePerRow().value() - SLACK);
    long each = (long) Math.ceil(eave.lengthM() / guards.spacing().value() - SLACK);
    if (count > 0 && each > 0) {
      draft.add(eave.id(), face, count * each);
      rows.computeIfAbsent(MeasureFormat.formatBoth(eave.lengthM()) + " under panels of up to " + MeasureFormat.formatBoth(longest) + ": "
          + count + (count == 1 ? " row of " : " rows of ") + each + " = " + count * each, k -> new ArrayList<>()).add(eave.id());
    }
  }
}
