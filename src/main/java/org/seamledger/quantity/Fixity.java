package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.FixedLine;
import org.seamledger.detail.FixedLines;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Vec3;
import org.seamledger.quantity.layout.EndCut;
import org.seamledger.quantity.layout.LinePiece;
import org.seamledger.quantity.layout.Panel;
import org.seamledger.quantity.physics.Thermal;
import org.seamledger.roof.RoofFace;

/** Along which line every panel is fixed, and how it moves at its free ends. */
public final class Fixity {

  /** How far beside the panel's edge a piece of a line lies: a wall's gap, and slack. */
  private static final double BESIDE = 0.25;
  private static final int FEW = 32;

  private final List<FixedPanel> panels;
  private final Map<String, List<FixedPanel>> byFace = new HashMap<>();
  /** By junction and face. */
  private final Map<String, Map<String, Along>> along = new HashMap<>();
  private final List<Finding> findings = new ArrayList<>();

  /** What is along a junction on one of its faces. */
  private static final class Along {
    private final List<EndCut> fixedCuts = new ArrayList<>();
    private double slotM;
    /** Of a long line, made when it is asked for: to hold every piece against every cut would take the square of their number. */
    private PlanIndex<EndCut> inPlan;

    Collection<EndCut> near(Vec3 point) {
      if (fixedCuts.size() < FEW) {
        return fixedCuts;
      }
      if (inPlan == null) {
        inPlan = new PlanIndex<>(fixedCuts, Fixity::reach);
      }
      return inPlan.overlapping(Box3.of(List.of(point)));
    }
  }

  private Fixity(List<FixedPanel> panels) {
    this.panels = List.copyOf(panels);
    for (FixedPanel p : panels) {
      byFace.computeIfAbsent(p.face(), f -> new ArrayList<>()).add(p);
      note(p, p.low(), p.panel().low(), FixedLine.LOW_END);
      note(p, p.high(), p.panel().high(), FixedLine.HIGH_END);
    }
  }

  private void note(FixedPanel p, PanelEnd end, List<EndCut> cuts, FixedLine line) {
    for (String junction : end.junctions()) {
      Along at = along.computeIfAbsent(junction, j -> new HashMap<>()).computeIfAbsent(p.face(), f -> new Along());
      if (p.ruled().contains(line)) {
        at.fixedCuts.addAll(cuts);
      } else {
        at.slotM = Math.max(at.slotM, end.slotM());
      }
    }
  }

  /**
   * Fixes every panel of a roof by the rules.
   *
   * @param rules shapes of {@code shapes/fixity.ttl}
   */
  public static Fixity of(List<RoofFace> faces, List<DetailedJunction> junctions, RoofLayout layout, RoofSystem system, FixedLines rules) {
    PanelEnds ends = new PanelEnds(junctions.stream().map(DetailedJunction::junction).toList());
    Map<List<List<String>>, List<FixedLine>> ruled = new HashMap<>();
    List<FixedPanel> panels = new ArrayList<>();
    for (RoofFace face : faces) {
      for (Panel p : layout.face(face.id()).panels()) {
        panels.add(fixed(face.id(), p, ends, system,
            kinds -> ruled.computeIfAbsent(kinds, k -> List.copyOf(rules.of(facts(k.get(0), k.get(1), system))))));
      }
    }
    Fixity fixity = new Fixity(panels);
    faces.forEach(f -> fixity.review(f, system));
    return fixity;
  }

  /** @param rules lines at which a panel is fixed, by the kinds of what it ends at, below and above */
  private static FixedPanel fixed(String face, Panel panel, PanelEnds ends, RoofSystem system,
      Function<List<List<String>>, List<FixedLine>> rules) {
    PanelEnds.Met low = ends.at(face, panel.low());
    PanelEnds.Met high = ends.at(face, panel.high());
    List<FixedLine> ruled = rules.apply(List.of(low.kinds(), high.kinds()));
    FixedLine line = ruled.size() == 1 ? ruled.get(0) : FixedLine.NONE;
    return new FixedPanel(face, panel, line, ruled, end(low, free(panel, ruled, FixedLine.LOW_END), system),
        end(high, free(panel, ruled, FixedLine.HIGH_END), system));
  }

  /** What the rules see of a panel; {@code FactList.PANEL} lists it. */
  private static SortedMap<String, Object> facts(List<String> low, List<String> high, RoofSystem system) {
    SortedMap<String, Object> facts = new TreeMap<>();
    facts.put("fixedAt", system.panel().fixedAt().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    facts.put("fixedClips", system.panel().fixedClips());
    facts.put("lowEnd", low);
    facts.put("highEnd", high);
    return facts;
  }

  /** Length of panel between its fixed line and an end; 0 where it is fixed there, or nowhere. */
  private static double free(Panel panel, List<FixedLine> ruled, FixedLine end) {
    return ruled.size() != 1 || ruled.contains(end) ? 0 : ruled.contains(FixedLine.CLIP) ? panel.lengthM() / 2 : panel.lengthM();
  }

  private static PanelEnd end(PanelEnds.Met at, double freeM, RoofSystem system) {
    if (freeM == 0) {
      return at.still();
    }
    double install = system.site().installMetal().value();
    double grow = Thermal.movementM(system.panel().metal(), freeM, Math.max(0, system.site().highestMetal().value() - install));
    double shrink = Thermal.movementM(system.panel().metal(), freeM, Math.max(0, install - system.site().lowestMetal().value()));
    return new PanelEnd(at.ids(), at.kinds(), grow, shrink, freeM > 0 ? Thermal.slotM(grow + shrink) : 0);
  }

  /** Panel by panel in the order of faces and pans. */
  public List<FixedPanel> panels() {
    return panels;
  }

  /** Those of one face, pan by pan. */
  public List<FixedPanel> of(String face) {
    return byFace.getOrDefault(face, List.of());
  }

  /** A panel with no fixed line, or with several, face by face with the panels named. */
  public List<Finding> findings() {
    return List.copyOf(findings);
  }

  private void review(RoofFace face, RoofSystem system) {
    List<FixedPanel> own = of(face.id());
    report(face, own.stream().filter(p -> p.ruled().isEmpty()).toList(), Code.NO_FIXED_LINE, "have no fixed line", system);
    report(face, own.stream().filter(p -> p.ruled().size() > 1).toList(), Code.TWO_FIXED_LINES, "are fixed along more than one line",
        system);
  }

  private void report(RoofFace face, List<FixedPanel> bad, Code code, String what, RoofSystem system) {
    if (!bad.isEmpty()) {
      LengthText text = LengthText.of(system);
      String list = String.join(", ", bad.stream().map(p -> "pan " + p.panel().pan() + " of " + text.run(p.panel().lengthM())).toList());
      findings.add(Finding.of(code, "panels of " + face.id() + " " + what + ": " + list, face.elements()));
    }
  }

  /** Whether the panel behind a piece of a junction's line is fixed there. */
  boolean fixes(String junction, String face, LinePiece piece) {
    Along at = at(junction).get(face);
    if (at != null) {
      Vec3 middle = piece.middle();
      for (EndCut c : at.near(middle)) {
        if (lies(middle, c)) {
          return true;
        }
      }
    }
    return false;
  }

  private Map<String, Along> at(String junction) {
    return along.getOrDefault(junction, Map.of());
  }

  /** Whatever lies along a cut is in it. */
  private static Box3 reach(EndCut cut) {
    return Box3.of(List.of(cut.left(), cut.right())).grown(2 * BESIDE);
  }

  private static boolean lies(Vec3 point, EndCut cut) {
    Vec3 left = cut.left();
    double x = cut.right().x() - left.x();
    double y = cut.right().y() - left.y();
    double z = cut.right().z() - left.z();
    double t = ((point.x() - left.x()) * x + (point.y() - left.y()) * y + (point.z() - left.z()) * z) / (x * x + y * y + z * z);
    return t >= -1e-6 && t <= 1 + 1e-6 && point.distance(left.plus(new Vec3(x, y, z).times(t))) <= BESIDE;
  }

  /** Length of the slots in what covers the free ends of a face's panels at a junction, metres; 0 where none moves there. */
  double slotM(String junction, String face) {
    Along at = at(junction).get(face);
    return at == null ? 0 : at.slotM;
  }

  /** The longest slot of all faces at a junction. */
  double slotM(String junction) {
    double longest = 0;
    for (Along at : at(junction).values()) {
      longest = Math.max(longest, at.slotM);
    }
    return longest;
  }
}
