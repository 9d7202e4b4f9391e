package org.seamledger.order;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.detail.MetalPart;
import org.seamledger.junction.Facts;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.formula.Cricket;
import org.seamledger.quantity.formula.Plate;

/** Parts that come by the piece, by their size: boots, clamps, plates, crickets, curbs. Parts that no size is known of go by name. */
final class PieceLines {

  private final OrderSource source;
  private final Map<String, LineDraft> drafts = new TreeMap<>();

  private final Map<String, String> sizes = new TreeMap<>();

  private PieceLines(OrderSource source) {
    this.source = source;
  }

  static List<OrderLine> of(OrderSource source) {
    PieceLines lines = new PieceLines(source);
    for (JunctionQuantities q : source.counted()) {
      DetailedJunction junction = source.junction(q);
      if (junction == null) {
        lines.node(q);
        continue;
      }
      for (MetalLine m : q.metal()) {
        if (m.lengthM() == 0 && m.pieces() > 0 && !source.isOfGutter(q, m)
            && q.closures().stream().noneMatch(c -> c.part().equals(m.part()))) {
          lines.add(junction, source.part(q, m.part()), m);
        }
      }
      lines.curb(junction);
    }
    return lines.drafts.values().stream().map(d -> d.inPacks(0, 1, "piece")).toList();
  }

  /** Corner pieces, end plates, kick-outs: each name is one piece, made to measure. */
  private void node(JunctionQuantities counted) {
    for (MetalLine m : counted.metal()) {
      String name = "piece:" + m.part().replace(' ', '-');
      String size = "sheet " + OrderSource.size(m.girthM());
      // The first girth of a name has the name's own id; ids must differ.
      String id = sizes.computeIfAbsent(name, k -> size).equals(size) ? name : name + ":" + mm(m.girthM());
      drafts.computeIfAbsent(id, k -> new LineDraft(id, OrderGroup.CORNERS, m.part(), "piece"))
          .size(size).product(ProductKey.of(name, m.girthM())).add(counted.junction(), "", m.pieces());
    }
  }

  private void add(DetailedJunction junction, MetalPart part, MetalLine counted) {
    Facts facts = junction.junction().junction().facts();
    String id = junction.junction().junction().id();
    if (part.id().equals("cricket") && facts.has("widthAcrossFallM")) {
      cricket(id, part, facts);
    } else if (junction.junction().type().family() == Kind.Family.ROUND) {
      round(junction, part, counted);
    } else {
      drafts.computeIfAbsent(part.id(), k -> new LineDraft(k, group(part), part.part(), "piece"))
          .add(id, counted.face(), counted.pieces());
    }
  }

  /** Outlets, overflows and joints of channels and linings belong to the drainage, cleats and splice plates to the formed pieces. */
  private static OrderGroup group(MetalPart part) {
    return switch (part.run()) {
      case AT_INTERVALS, BETWEEN_INTERVALS -> OrderGroup.DRAINAGE;
      case AT_SPACING, PER_LAP, PER_SEAM, PER_PIECE -> OrderGroup.CORNERS;
      default -> OrderGroup.PENETRATIONS;
    };
  }

  private void round(DetailedJunction junction, MetalPart part, MetalLine counted) {
    String id = junction.junction().junction().id();
    double diameter = diameter(junction);
    if (part.id().equals("plate")) {
      Plate plate = Plate.over(diameter, source.system().plateAllowance());
      draft("plate:" + mm(plate.widthM()) + "x" + mm(plate.lengthM()), part.part())
          .size(OrderSource.size(plate.widthM()) + " × " + OrderSource.size(plate.lengthM())).add(id, counted.face(), counted.pieces());
    } else {
      draft(part.id() + ":" + mm(diameter), part.part()).size("for a pipe of " + OrderSource.size(diameter))
          .add(id, counted.face(), counted.pieces());
    }
  }

  private void cricket(String junction, MetalPart part, Facts facts) {
    double width = facts.number("widthAcrossFallM");
    Cricket cricket = Cricket.behind(width, facts.number("slopeDegrees"));
    LineDraft draft = draft("cricket:" + mm(width) + "x" + mm(cricket.heightM()), part.part());
    if (!draft.isNeeded()) {
      draft.step("two triangles of " + LineDraft.number(cricket.areaM2() / 2) + " m2, " + LineDraft.number(cricket.seamM())
          + " m of seams at its ridge and its two valleys, each");
    }
    draft.size(OrderSource.size(width) + " wide, " + OrderSource.size(cricket.heightM()) + " high").add(junction, "", 1);
    draft.measure("m2", cricket.areaM2());
    draft.measure("m", cricket.seamM());
  }

  /** Once for each thing, at its upper side; a chimney is the mason's. */
  private void curb(DetailedJunction junction) {
    Facts f = junction.junction().junction().facts();
    Kind kind = junction.junction().type();
    if (kind.family() == Kind.Family.PENETRATION && kind.water() == Kind.Water.AGAINST && f.has("widthAcrossFallM")
        && f.has("depthAlongFallM") && !f.word("neighbourClass").equals("IfcChimney")) {
      double width = f.number("widthAcrossFallM");
      double depth = f.number("depthAlongFallM");
      draft("curb:" + mm(width) + "x" + mm(depth), "curb").size(OrderSource.size(width) + " × " + OrderSource.size(depth))
          .add(junction.junction().junction().id(), "", 1);
    }
  }

  private static double diameter(DetailedJunction junction) {
    double diameter = junction.junction().junction().facts().number("diameterM");
    return Double.isNaN(diameter) ? junction.junction().junction().lengthM() / Math.PI : diameter;
  }

  private LineDraft draft(String id, String item) {
    return drafts.computeIfAbsent(id, k -> new LineDraft(id, OrderGroup.PENETRATIONS, item, "piece"));
  }

  private static long mm(double metres) {
    return Math.round(metres * 1000);
  }
}
