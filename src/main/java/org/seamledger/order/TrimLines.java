package org.seamledger.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.order.stock.RunPieces;
import org.seamledger.order.stock.StockPlan;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.system.FlashingSettings;
import org.seamledger.quantity.system.StockSettings;
import org.seamledger.takeoff.Takeoff;

/** Trims and flashings in stock lengths, by profile and girth, cut so that offcuts are used again. */
public final class TrimLines {

  private final RoofSystem system;
  private final SortedMap<String, Profile> profiles = new TreeMap<>();

  /** The runs of one profile. */
  private static final class Profile {
    final String part;
    final double girthM;
    final List<TrimPlan.Piece> runs = new ArrayList<>();
    int laps;
    /** Bought with the gutters: it has no line among the trims. */
    boolean isGutter;

    Profile(String part, double girthM) {
      this.part = part;
      this.girthM = girthM;
    }
  }

  TrimLines(OrderSource source) {
    this.system = source.system();
    Map<Double, String> girths = new HashMap<>();
    for (JunctionQuantities q : source.counted()) {
      for (MetalLine m : q.metal()) {
        if (m.lengthM() > 0 && q.closures().stream().noneMatch(c -> c.part().equals(m.part()))) {
          Profile p = profiles.computeIfAbsent(
              m.part() + girths.computeIfAbsent(m.girthM(), g -> String.format(Locale.ROOT, " %08.4f", g)),
              k -> new Profile(m.part(), m.girthM()));
          p.runs.add(new TrimPlan.Piece(q.junction(), m.face(), m.lengthM()));
          p.laps += m.laps();
          p.isGutter = source.isOfGutter(q, m);
        }
      }
    }
  }

  /** The cutting plans of a takeoff's trims, by name and girth. */
  public static List<TrimPlan> plans(Takeoff takeoff) {
    TrimLines trims = new TrimLines(new OrderSource(takeoff));
    return trims.profiles.values().stream().map(trims::plan).toList();
  }

  private TrimPlan plan(Profile profile) {
    FlashingSettings flashing = system.flashing();
    StockSettings stock = system.purchase().stock();
    List<TrimPlan.Piece> pieces = new ArrayList<>();
    for (TrimPlan.Piece run : profile.runs) {
      RunPieces.of(run.lengthM(), flashing.length().value(), flashing.lap().value(), stock.leastPiece().value())
          .forEach(length -> pieces.add(new TrimPlan.Piece(run.junction(), run.face(), length)));
    }
    return new TrimPlan(profile.part, profile.girthM, pieces, StockPlan.of(pieces.stream().map(TrimPlan.Piece::lengthM).toList(),
        flashing.length().value(), stock.leastPiece().value(), stock.sawCut().value()));
  }

  List<OrderLine> lines() {
    List<OrderLine> lines = new ArrayList<>();
    String last = "";
    for (Profile profile : profiles.values()) {
      if (profile.isGutter) {
        continue;
      }
      // The first girth of a part has the part's own id; ids must differ.
      String id = "trim:" + profile.part + (profile.part.equals(last) ? ":" + MeasureFormat.fixed(profile.girthM * 1000, 0) : "");
      last = profile.part;
      lines.add(line(id, profile, plan(profile)));
    }
    return lines;
  }

  private OrderLine line(String id, Profile profile, TrimPlan plan) {
    LineDraft draft = new LineDraft(id, OrderGroup.TRIMS, profile.part, "m");
    profile.runs.forEach(run -> draft.add(run.junction(), run.face(), run.lengthM()));
    double stock = system.flashing().length().value();
    double sheetM2 = plan.sheetM() * profile.girthM;
    draft.measure("m2", sheetM2);
    draft.measure("kg", sheetM2 * OrderSource.sheetKgM2(system.flashing().metal(), system.panel().thickness().value()));
    describe(draft, profile, plan);
    double waste = system.waste().flashing().value();
    return draft.size("girth " + OrderSource.size(profile.girthM) + ", lengths of " + system.flashing().length())
        .product(ProductKey.of("trim:" + profile.part, profile.girthM)).inLengths(waste, plan.sheetM(), stock, plan.plan().bars().size());
  }

  private void describe(LineDraft draft, Profile profile, TrimPlan plan) {
    long whole = plan.pieces().stream().filter(p -> p.lengthM() > system.flashing().length().value() - 1e-6).count();
    draft.step(
        MeasureFormat.formatBoth(draft.net()) + " in " + count(profile.runs.size(), "run") + ", " + count(profile.laps, "lap") + " of "
            + system.flashing().lap() + ": " + MeasureFormat.formatMetres(plan.sheetM()) + " of sheet in " + whole + " whole and "
            + (plan.pieces().size() - whole) + " cut pieces");
    StockPlan bars = plan.plan();
    draft.step(count(bars.bars().size(), "stock length") + ", no plan needs fewer than " + bars.bound() + "; "
        + MeasureFormat.fixed(100 * (1 - plan.sheetM() / (bars.bars().size() * system.flashing().length().value())), 1) + " % offcuts");
    bars.bars().stream().filter(b -> b.size() > 1).map(b -> b.stream().map(i -> MeasureFormat.fixed(plan.pieces().get(i).lengthM(), 3))
        .collect(Collectors.joining(" + "))).collect(Collectors.groupingBy(t -> t, TreeMap::new, Collectors.counting()))
        .forEach((cut, times) -> draft.step(times + " × " + cut + " m from one"));
  }

  private static String count(long n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }
}
