package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.FixedLine;
import org.seamledger.detail.FixedLines;
import org.seamledger.detail.Run;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.node.KindedNode;
import org.seamledger.progress.Progress;
import org.seamledger.quantity.formula.ObliqueCut;
import org.seamledger.quantity.layout.FaceLayout;
import org.seamledger.quantity.layout.LinePiece;
import org.seamledger.quantity.layout.Panel;
import org.seamledger.roof.RoofFace;

/**
 * The quantities of a takeoff.
 *
 * @param byJunction by id, sorted; nodes where lines meet are among them
 * @param panels the cut list, face by face in the order of their ids, the longest first
 * @param fixity along which line each panel is fixed
 * @param findings of the count itself: sums that don't agree, slivers, panels without exactly one fixed line
 */
public record Quantities(RoofSystem system, RoofLayout layout, SortedMap<String, JunctionQuantities> byJunction,
    ProjectQuantities project, List<PanelCut> panels, Fixity fixity, List<Finding> findings) {

  /** Lengths that two methods give agree within this (metres) and this share. */
  private static final double SLACK = 0.005;
  private static final double SHARE = 0.002;

  public Quantities {
    byJunction = Collections.unmodifiableSortedMap(new TreeMap<>(byJunction));
    panels = List.copyOf(panels);
    findings = List.copyOf(findings);
  }

  /**
   * Counts everything.
   *
   * @param nodes where these junctions end and meet: what they take goes by their ids among the junctions' and into the project's sums
   * @param layout that of the same faces and system, which the choice of details needed, too
   * @param rules that fix panels
   * @param progress receives the progress, junction by junction
   */
  public static Quantities of(List<RoofFace> faces, List<DetailedJunction> junctions, List<KindedNode> nodes, RoofLayout layout,
      RoofSystem system, FixedLines rules, Progress progress) {
    Fixity fixity = Fixity.of(faces, junctions, layout, system, rules);
    SortedMap<String, JunctionQuantities> counted = new TreeMap<>();
    List<Finding> findings = new ArrayList<>();
    for (DetailedJunction j : progress.over(junctions)) {
      CountedLine line = CountedLine.of(j.junction(), layout, system, fixity);
      JunctionQuantities q = JunctionCounter.count(line, j.detail());
      counted.put(q.junction(), q);
      reconcile(line, q, layout, findings);
      uncounted(j, q, findings);
    }
    findings.addAll(fixity.findings());
    faces.stream().filter(f -> RoofLayout.isTooWide(f, system)).forEach(f -> findings.add(Finding.of(Code.TOO_MANY_SEAMS,
        "face " + f.id() + " is so large that it would have more seams than any building", f.elements())));
    faces.forEach(f -> slivers(f, layout.face(f.id()), system, findings));
    nodes.forEach(n -> counted.put(n.id(), NodeCounter.count(n, system)));
    ProjectQuantities project = ProjectSum.of(junctions, counted.values(), layout, system);
    return new Quantities(system, layout, counted, project, panelCuts(faces, fixity), fixity, findings);
  }

  /** The same with one line counted anew, as it is made here; the project's sums stay. */
  public Quantities withLine(DetailedJunction line) {
    SortedMap<String, JunctionQuantities> counted = new TreeMap<>(byJunction);
    JunctionQuantities q = JunctionCounter.count(CountedLine.of(line.junction(), layout, system, fixity), line.detail());
    counted.put(q.junction(), q);
    return new Quantities(system, layout, counted, project, panels, fixity, findings);
  }

  /**
   * Closures of every face against the line's length, by another way than they were counted: from the line's run along the eave and its
   * plan angle to the fall, run / sin ψ.
   */
  private static void reconcile(CountedLine line, JunctionQuantities counted, RoofLayout layout, List<Finding> findings) {
    Junction junction = line.junction();
    if (counted.closures().isEmpty() || junction.path().size() != 2 || junction.facts().flag("curved")) {
      return;
    }
    for (JunctionSide side : line.sides()) {
      String face = side.face();
      boolean other = isOther(junction.facts(), layout.roofFace(face).slopeDegrees());
      double obliquity = junction.facts().number(other ? "otherObliquityDegrees" : "obliquityDegrees");
      double slope = junction.facts().number(other ? "otherSlopeDegrees" : "slopeDegrees");
      if (Double.isNaN(obliquity) || Double.isNaN(slope) || counted.closures().stream().noneMatch(c -> c.face().equals(face))) {
        continue;
      }
      double run = side.pieces().stream().mapToDouble(LinePiece::widthM).sum();
      double length = ObliqueCut.of(obliquity, slope).lengthAcross(run);
      if (Math.abs(length - junction.lengthM()) > SLACK + SHARE * junction.lengthM()) {
        findings.add(
            Finding.of(Code.CLOSURES_MISMATCH, "closures on " + face + " add up to " + MeasureFormat.formatBoth(length) + ", the line is "
                + MeasureFormat.formatBoth(junction.lengthM()), junction.elements()).at(junction.id()));
      }
    }
  }

  /** A detail that a person chose may ask for pieces between seams where no seam meets the line. */
  private static void uncounted(DetailedJunction j, JunctionQuantities counted, List<Finding> findings) {
    boolean asked = j.detail().metal().stream().anyMatch(m -> m.run() == Run.PER_PIECE);
    if (j.decided().isPresent() && asked && counted.closures().isEmpty()) {
      Junction line = j.junction().junction();
      findings.add(
          Finding.of(Code.UNFIT_DETAIL, "detail " + j.detail().id() + ", a manual override, has pieces between seams; no seam ends at this"
              + " line, and none is counted", line.elements()).at(line.id()));
    }
  }

  /** Facts name a first and another face, by their slopes; faces of equal slope meet the line at equal angles. */
  private static boolean isOther(Facts facts, double slopeDegrees) {
    double first = Math.abs(facts.number("slopeDegrees") - slopeDegrees);
    double second = Math.abs(facts.number("otherSlopeDegrees") - slopeDegrees);
    return second < first;
  }

  private static void slivers(RoofFace face, FaceLayout layout, RoofSystem system, List<Finding> findings) {
    List<Panel> slivers = layout.panels().stream().filter(Panel::sliver).toList();
    if (!slivers.isEmpty()) {
      LengthText text = LengthText.of(system);
      String list = String.join(", ", slivers.stream().map(p -> "pan " + p.pan() + " of " + text.part(p.widthM())).toList());
      findings.add(Finding.of(Code.SLIVER, face.id() + " has panels narrower than " + system.panel().minimumPiece() + ": " + list,
          face.elements()));
    }
  }

  /** Panels of a face that are equal to a millimetre and a tenth of a degree are cut alike; a shaped one like no other. */
  private record Size(long length, long width, long lowBevel, long highBevel, int shapedPan, FixedLine fixed) {

    static Size of(FixedPanel fixed) {
      Panel p = fixed.panel();
      return new Size(Math.round(p.lengthM() * 1000), Math.round(p.widthM() * 1000), Math.round(p.lowBevelDegrees() * 10),
          Math.round(p.highBevelDegrees() * 10), p.shaped() ? p.pan() : 0, fixed.fixed());
    }
  }

  private static List<PanelCut> panelCuts(List<RoofFace> faces, Fixity fixity) {
    List<PanelCut> cuts = new ArrayList<>();
    for (RoofFace face : faces) {
      Map<Size, PanelCut> equal = new LinkedHashMap<>();
      for (FixedPanel fixed : fixity.of(face.id())) {
        Panel p = fixed.panel();
        equal.merge(Size.of(fixed), new PanelCut(face.id(), 1, p, fixed.fixed()),
            (x, y) -> new PanelCut(x.face(), x.count() + 1, x.panel(), x.fixed()));
      }
      List<PanelCut> sorted = new ArrayList<>(equal.values());
      sorted.sort((a, b) -> Long.compare(Math.round(b.panel().lengthM() * 1000), Math.round(a.panel().lengthM() * 1000)));
      cuts.addAll(sorted);
    }
    return cuts;
  }
}
