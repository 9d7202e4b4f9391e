package org.seamledger.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.order.stock.RunPieces;
import org.seamledger.order.stock.StockPlan;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.physics.OpenChannel;
import org.seamledger.quantity.physics.Rain;
import org.seamledger.quantity.system.GutterSettings;
import org.seamledger.takeoff.Takeoff;

/**
 * Gutters along the eaves whose details hang one, each once, with a size that carries the five minutes' rain that the drainage trace
 * brings them: a box, three quarters as deep as wide, by Manning's equation; outlets by the
 * table of leaders. It is a size to order by, no drainage design.
 */
final class GutterLines {

  private static final double INCH = 0.0254;
  /** Widths of gutters that are sold, inches: common practice. */
  private static final int[] WIDTHS = {5, 6, 7, 8, 10, 12, 15};
  private static final double DEPTH_OF_WIDTH = 0.75;
  /** Fall of hung gutters, 1/16 in a foot: common practice. */
  private static final double FALL = 1.0 / 192;
  private static final double MANNING_N = 0.012;

  private final RoofSystem system;
  private final OrderSource source;
  private final Takeoff takeoff;
  private final List<GutterRuns.Chain> chains;
  private final Map<String, Double> flows = new TreeMap<>();
  private final LineDraft gutter = draft("gutter", "gutter", "m");
  private final LineDraft outlets = draft("gutter-outlet", "gutter outlets", "piece");
  private final LineDraft hangers = draft("gutter-hanger", "gutter hangers", "piece");
  private final LineDraft caps = draft("gutter-end", "gutter end caps", "piece");
  private final LineDraft corners = draft("gutter-corner", "gutter corner pieces", "piece");
  private final LineDraft joints = draft("gutter-joint", "gutter expansion joints", "piece");
  private final List<Double> pieces = new ArrayList<>();
  private double mostToOneOutlet;

  private GutterLines(OrderSource source) {
    this.system = source.system();
    this.source = source;
    this.takeoff = source.takeoff();
    List<Junction> eaves = takeoff.detailed().stream().filter(OrderSource::hasGutter)
        .filter(j -> j.junction().type().family() == Kind.Family.EDGE
            && j.junction().type().water() == Kind.Water.OVER && j.junction().type().line() == Kind.Line.EAVE)
        .map(DetailedJunction::junction).map(k -> k.junction()).filter(j -> j.lengthM() > 0).toList();
    this.chains = GutterRuns.of(eaves, takeoff.nodes());
    takeoff.drainage().leaves().forEach((id, area) -> flows.merge(id, area, Double::sum));
    takeoff.drainage().drops().forEach((id, to) -> flows.merge(id, to.values().stream().mapToDouble(d -> d).sum(), Double::sum));
  }

  static List<OrderLine> of(OrderSource source) {
    GutterLines lines = new GutterLines(source);
    return lines.chains.isEmpty() ? List.of() : lines.lines();
  }

  private static LineDraft draft(String id, String item, String unit) {
    return new LineDraft(id, OrderGroup.DRAINAGE, item, unit);
  }

  private List<OrderLine> lines() {
    chains.forEach(this::add);
    takeoff.detailed().stream().filter(OrderSource::hasGutter).forEach(this::parts);
    GutterSettings gutters = system.purchase().gutters();
    double length = system.flashing().length().value();
    StockPlan plan = StockPlan.of(pieces, length, system.purchase().stock().leastPiece().value(), 0);
    gutter.step(plan.bars().size() + " stock lengths, no plan needs fewer than " + plan.bound() + "; eaves in one line have one gutter");
    gutter.step(sizing());
    outlets.step("one for each " + gutters.outletSpacing() + " of a gutter or part of it");
    outlets.step("leaders " + litres(mostToOneOutlet) + ": the smallest that carry it, 7/24 full");
    hangers.step(
        "at most " + gutters.hangerSpacing() + " apart along each eave, as its detail counts them; their screws stand with the fasteners");
    caps.step("where an eave ends alone");
    corners.step("where two eaves meet at an angle");
    List<OrderLine> lines = new ArrayList<>(List.of(
        gutter.size("at least " + OrderSource.size(widthM()) + " wide, lengths of " + system.flashing().length())
            .inLengths(0, gutter.net(), length, plan.bars().size()),
        outlets.size("leader " + OrderSource.size(OpenChannel.leaderDiameter(mostToOneOutlet))).inPacks(0, 1, "piece")));
    List.of(hangers, caps, corners, joints).stream().filter(LineDraft::isNeeded).forEach(d -> lines.add(d.inPacks(0, 1, "piece")));
    return lines;
  }

  private void add(GutterRuns.Chain chain) {
    GutterSettings gutters = system.purchase().gutters();
    for (GutterRuns.Run run : chain.runs()) {
      run.eaves().forEach(j -> gutter.add(j.id(), "", j.lengthM()));
      pieces.addAll(RunPieces.of(run.lengthM(), system.flashing().length().value(), 0, system.purchase().stock().leastPiece().value()));
    }
    long count = (long) Math.ceil(chain.lengthM() / gutters.outletSpacing().value() - 1e-6);
    spread(outlets, chain.runs().stream().flatMap(r -> r.eaves().stream()).toList(), count);
    double area = chain.lines().stream().mapToDouble(id -> flows.getOrDefault(id, 0.0)).sum();
    double flow = Rain.flow(system.site().runoff().value(), system.fiveMinuteRainfallMs(), area);
    mostToOneOutlet = Math.max(mostToOneOutlet, flow / count);
    chain.ends().forEach(id -> caps.add(id, "", 1));
    chain.corners().forEach(id -> corners.add(id, "", 1));
  }

  /** Hangers and expansion joints, as the eave's detail counts them. */
  private void parts(DetailedJunction eave) {
    String id = eave.junction().junction().id();
    JunctionQuantities counted = takeoff.quantities().byJunction().get(id);
    for (MetalLine line : counted.metal()) {
      String part = source.part(counted, line.part()).id();
      if (part.equals("joint")) {
        joints.add(id, "", line.pieces());
      } else if (part.equals("bracket")) {
        hangers.add(id, "", line.pieces());
      }
    }
  }

  /** Whole pieces over eaves by their lengths. */
  private static void spread(LineDraft draft, List<Junction> eaves, long count) {
    double all = eaves.stream().mapToDouble(Junction::lengthM).sum();
    double before = 0;
    long given = 0;
    for (Junction eave : eaves) {
      before += eave.lengthM();
      long upTo = Math.round(count * before / all);
      if (upTo > given) {
        draft.add(eave.id(), "", upTo - given);
      }
      given = upTo;
    }
  }

  /** Of the narrowest that carries the greatest flow to one outlet; the widest where none does. */
  private double widthM() {
    for (int inches : WIDTHS) {
      double width = inches * INCH;
      if (OpenChannel.rectangularFlow(width, DEPTH_OF_WIDTH * width, MANNING_N, FALL) >= mostToOneOutlet) {
        return width;
      }
    }
    return WIDTHS[WIDTHS.length - 1] * INCH;
  }

  private String sizing() {
    double width = WIDTHS[WIDTHS.length - 1] * INCH;
    boolean enough = OpenChannel.rectangularFlow(width, DEPTH_OF_WIDTH * width, MANNING_N, FALL) >= mostToOneOutlet;
    return litres(mostToOneOutlet) + ", in a box three quarters as deep as wide, falling 1/16 in a foot, by Manning's equation; "
        + (enough ? "no drainage design" : "more than the widest carries: put outlets closer together");
  }

  private static String litres(double flow) {
    return "for at most " + MeasureFormat.fixed(flow * 1000, 2) + " l/s to one outlet in five minutes' rain";
  }
}
