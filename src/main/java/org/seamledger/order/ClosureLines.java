package org.seamledger.order;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.ClosureCut;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.roof.RoofFace;

/** Pieces between the seams, cut to the clear width, and the plugs at the ends of their rows. */
final class ClosureLines {

  /** Nobody cuts shorter ones, metres: common practice. */
  private static final double LEAST_CLOSURE = 0.006;

  private ClosureLines() {
  }

  static List<OrderLine> of(OrderSource source) {
    Map<String, LineDraft> drafts = new LinkedHashMap<>();
    Map<String, TreeMap<Long, Integer>> lengths = new TreeMap<>();
    Map<String, Integer> slivers = new TreeMap<>();
    LineDraft plugs = new LineDraft("closure-plug", OrderGroup.CLOSURES, "plugs at the ends of rows of closures", "piece");
    for (JunctionQuantities q : source.counted()) {
      for (ClosureCut cut : q.closures()) {
        String id = id(source.part(q, cut.part()).id());
        LineDraft draft = drafts.computeIfAbsent(id, k -> new LineDraft(id, OrderGroup.CLOSURES, cut.part(), "piece"));
        double clear = source.system().clearM(cut);
        if (clear < LEAST_CLOSURE) {
          slivers.merge(id, cut.count(), Integer::sum);
          continue;
        }
        draft.add(q.junction(), cut.face(), cut.count());
        draft.measure("m", cut.count() * clear);
        lengths.computeIfAbsent(id, k -> new TreeMap<>(java.util.Comparator.reverseOrder())).merge(Math.round(clear * 1000), cut.count(),
            Integer::sum);
      }
      if (q.cornerPlugs() > 0) {
        plugs.add(q.junction(), "", q.cornerPlugs());
      }
    }
    List<OrderLine> lines = new ArrayList<>();
    slivers.forEach((id, count) -> drafts.get(id).step(count + " gaps narrower than " + OrderSource.size(LEAST_CLOSURE)
        + " are filled with sealant and need no piece"));
    drafts.values().removeIf(draft -> !draft.isNeeded());
    drafts.forEach((id, draft) -> {
      if (id.equals("closure-vented")) {
        draft.step(freeArea(source));
      }
      lines.add(line(draft, lengths.get(id), height(id, source.system()), source.system()));
    });
    if (plugs.isNeeded()) {
      plugs.step("two for each row of closures; the ends of seams are filled with sealant and need none");
      lines.add(plugs.inPacks(source.system().waste().closures().value(), source.system().purchase().packs().plugs(), "box"));
    }
    return lines;
  }

  /**
   * The opening that vented ridges have in the deck, and what the code asks for at the upper half of the roof: 1/300 of the area below,
   * half of it high up (International Residential Code R806.2). The closures' own net free area is the maker's.
   */
  private static String freeArea(OrderSource source) {
    double slotM2 = 0;
    Set<String> faces = new TreeSet<>();
    for (DetailedJunction j : source.junctions().values()) {
      if (j.detail().metal().stream().anyMatch(m -> m.id().equals("vented-closure"))) {
        slotM2 += j.junction().junction().lengthM() * j.junction().junction().faces().size() * source.system().ridge().slot().value();
        faces.addAll(j.junction().junction().faces());
      }
    }
    double planM2 = source.takeoff().faces().stream().filter(f -> faces.contains(f.id())).mapToDouble(RoofFace::planAreaM2).sum();
    return "slots of " + source.system().ridge().slot() + " on each side open " + MeasureFormat.formatArea(slotM2)
        + "; 1/300 of the plan area of the faces there, half of it at the ridge, asks for " + MeasureFormat.formatArea(planM2 / 600)
        + " of net free area (International Residential Code R806.2): compare the maker's for the closures";
  }

  private static String id(String part) {
    return part.equals("closure") ? "closure" : part.equals("vented-closure") ? "closure-vented" : "closure:" + part;
  }

  /** The openings of a vented closure stand above its solid metal, which is as high as that of any other. */
  private static String height(String id, RoofSystem system) {
    return system.closure().height() + (id.equals("closure-vented") ? " + " + system.ridge().opening() + " of openings" : "") + " high, ";
  }

  private static OrderLine line(LineDraft draft, TreeMap<Long, Integer> lengths, String height, RoofSystem system) {
    StringBuilder list = new StringBuilder("clear between seams, less " + OrderSource.size(system.seamThicknessM()) + " for the seam: ");
    lengths.forEach((mm, count) -> list.append(list.charAt(list.length() - 2) == ':' ? "" : ", ").append(count + " × " + mm + " mm"));
    draft.step(list.toString());
    String each = lengths.size() == 1 ? MeasureFormat.formatInches(lengths.firstKey() / 1000.0) + " long"
        : lengths.size() + " lengths, see the cut list";
    return draft.size(height + each).inPacks(system.waste().closures().value(), 1, "piece");
  }
}
