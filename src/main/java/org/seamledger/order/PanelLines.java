package org.seamledger.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.Segment;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.layout.Panel;
import org.seamledger.quantity.system.CutSettings;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/** Panels, a line for each face, with every length as cut. */
public final class PanelLines {

  /** The product of all faces together. */
  static final String PANEL = "panel";

  /** A panel's end this near to an eave ends there, metres: a bevelled end's middle lies on the line, but for the model's own slack. */
  private static final double AT = 0.05;

  private final OrderSource source;
  private final RoofSystem system;
  private final Map<String, List<Segment>> eaves = new HashMap<>();

  private PanelLines(OrderSource source) {
    this.source = source;
    this.system = source.system();
    for (DetailedJunction j : source.takeoff().detailed()) {
      Kind kind = j.junction().type();
      if (kind.family() == Kind.Family.EDGE && kind.water() == Kind.Water.OVER) {
        List<Segment> eave = Segment.of(j.junction().junction().path());
        j.junction().junction().faces().forEach(f -> eaves.computeIfAbsent(f, k -> new ArrayList<>()).addAll(eave));
      }
    }
  }

  /** How long a blank is cut for a panel of a face. */
  public interface BlankLength {
    /**
     * Metres: the panel's own length, the hem, the overhang where it ends at an eave, less the setback at its head; of each piece that it
     * is lapped of, from the low end, with the lap over the one below.
     */
    List<Double> of(String face, Panel panel);
  }

  /** The lengths as cut in a takeoff. */
  public static BlankLength lengths(Takeoff takeoff) {
    PanelLines lines = new PanelLines(new OrderSource(takeoff));
    return lines::blanksM;
  }

  static List<OrderLine> of(OrderSource source) {
    PanelLines lines = new PanelLines(source);
    return source.takeoff().faces().stream().filter(f -> !lines.panels(f).isEmpty()).map(lines::line).toList();
  }

  private List<Panel> panels(RoofFace face) {
    return source.takeoff().quantities().layout().face(face.id()).panels();
  }

  private List<Double> blanksM(String face, Panel panel) {
    CutSettings cuts = system.purchase().cuts();
    boolean eave = endsAt(panel, eaves.getOrDefault(face, List.of()));
    List<Double> blanks = new ArrayList<>();
    for (int i = 0; i < panel.piecesM().size(); i++) {
      double foot = i > 0 ? cuts.endLap().value() : cuts.hem().value() + (eave ? cuts.eaveOverhang().value() : 0);
      double head = i == panel.piecesM().size() - 1 ? cuts.headSetback().value() : 0;
      blanks.add(Math.max(0, panel.piecesM().get(i) + foot - head));
    }
    return blanks;
  }

  /** Whether a panel's low end lies on a line. */
  static boolean endsAt(Panel panel, Junction line) {
    return endsAt(panel, Segment.of(line.path()));
  }

  private static boolean endsAt(Panel panel, List<Segment> lines) {
    return !lines.isEmpty() && panel.lowMiddle().filter(end -> lines.stream().anyMatch(s -> s.distance(end) <= AT)).isPresent();
  }

  private boolean isLapped(RoofFace face) {
    return panels(face).stream().anyMatch(p -> p.piecesM().size() > 1);
  }

  private OrderLine line(RoofFace face) {
    LineDraft draft =
        new LineDraft("panel:" + face.id(), OrderGroup.PANELS, "panels of " + face.id(), "piece").product(new ProductKey(PANEL, 0));
    double coil = system.panel().coverage().value() + system.purchase().coil().seamAllowance().value();
    TreeMap<Long, Integer> byLength = new TreeMap<>(java.util.Comparator.reverseOrder());
    for (Panel panel : panels(face)) {
      for (double blank : blanksM(face.id(), panel)) {
        draft.add("", face.id(), 1);
        draft.measure("m", blank);
        draft.measure("m2", blank * coil);
        byLength.merge((long) Math.ceil(blank * 1000 - 1e-3), 1, Integer::sum);
      }
    }
    draft.measure("kg", draft.measure("m2") * OrderSource.sheetKgM2(system.panel().metal(), system.panel().thickness().value()));
    CutSettings cuts = system.purchase().cuts();
    draft.step("length on the face + hem " + cuts.hem() + " + overhang " + cuts.eaveOverhang() + " at eaves − setback " + cuts.headSetback()
        + " at the head" + (isLapped(face) ? " + end lap " + cuts.endLap() + " of all but the lowest piece" : "") + ": "
        + byLength.entrySet().stream().map(e -> e.getValue() + " × " + MeasureFormat.fixed(e.getKey() / 1000.0, 3) + " m")
            .collect(Collectors.joining(", ")));
    draft.step(MeasureFormat.formatBoth(draft.measure("m")) + " of coil " + OrderSource.size(coil) + " wide: "
        + MeasureFormat.formatArea(draft.measure("m2")) + ", " + MeasureFormat.fixed(draft.measure("kg"), 1) + " kg; covers "
        + MeasureFormat.formatArea(face.areaM2()));
    return draft.size(system.panel().coverage() + " coverage, " + system.panel().metal().word() + " " + system.panel().thickness())
        .inPacks(0, 1, "piece");
  }
}
