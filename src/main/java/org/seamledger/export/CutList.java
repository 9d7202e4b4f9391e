package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.MetalPart;
import org.seamledger.export.section.FoldedPart;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.order.PanelLines;
import org.seamledger.order.TrimLines;
import org.seamledger.order.TrimPlan;
import org.seamledger.quantity.ClosureCut;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.PanelCut;
import org.seamledger.quantity.layout.Panel;
import org.seamledger.takeoff.Takeoff;

/**
 * The shop's cut list as comma-separated values: panels as blanks face by face, hem, overhang and setback included; closures junction by
 * junction, to the clear width between seams; trims by the stock length that each piece is cut from; closures and trims with their folded
 * profile. Equal panels and closures share a row.
 */
public final class CutList {

  private CutList() {
  }

  /** Writes all rows and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    Rows rows = new Rows(out);
    rows.row(List.of("part", "face", "junction", "pieces", "widthM", "widthIn", "lengthM", "lengthIn", "lowBevelDegrees",
        "highBevelDegrees", "note", "profile"));
    Map<String, String> profiles = profiles(takeoff);
    PanelLines.BlankLength blanks = PanelLines.lengths(takeoff);
    for (PanelCut cut : takeoff.quantities().panels()) {
      List<Double> pieces = blanks.of(cut.face(), cut.panel());
      for (int i = 0; i < pieces.size(); i++) {
        rows.row(panel(cut, pieces.get(i), i, pieces.size()));
      }
    }
    for (JunctionQuantities junction : takeoff.quantities().byJunction().values()) {
      for (ClosureCut cut : junction.closures()) {
        rows.row(closure(junction.junction(), cut, takeoff.system().clearM(cut), profiles));
      }
    }
    for (TrimPlan plan : TrimLines.plans(takeoff)) {
      trims(plan, profiles, rows);
    }
    rows.flush();
  }

  /** How parts are folded, in words, by junction and part. */
  private static Map<String, String> profiles(Takeoff takeoff) {
    Map<String, String> profiles = new HashMap<>();
    for (DetailedJunction j : takeoff.lines()) {
      for (MetalPart part : j.detail().metal()) {
        FoldedPart.of(takeoff, j, part)
            .ifPresent(f -> profiles.put(j.junction().junction().id() + ' ' + part.part(), f.words(DrawingUnits.METRIC)));
      }
    }
    return profiles;
  }

  private static void trims(TrimPlan plan, Map<String, String> profiles, Rows rows) throws IOException {
    for (int bar = 0; bar < plan.bars().size(); bar++) {
      for (int i : plan.bars().get(bar)) {
        TrimPlan.Piece piece = plan.pieces().get(i);
        rows.row(List.of(plan.part(), piece.face(), piece.junction(), "1", Rows.number(plan.girthM()),
            MeasureFormat.formatInches(plan.girthM()), Rows.number(piece.lengthM()), MeasureFormat.formatInches(piece.lengthM()), "0", "0",
            "from stock length " + (bar + 1) + " of " + plan.bars().size(),
            profiles.getOrDefault(piece.junction() + ' ' + plan.part(), "")));
      }
    }
  }

  private static List<String> panel(PanelCut cut, double blankM, int piece, int pieces) {
    Panel panel = cut.panel();
    String note = (pieces > 1 ? "piece " + (piece + 1) + " of " + pieces + " from the low end, lapped " : "")
        + (panel.shaped() ? "to shape, pan " + panel.pan() : "") + (panel.sliver() ? " narrower than can be worked" : "");
    return List.of("panel", cut.face(), "", Integer.toString(cut.count()), Rows.number(panel.widthM()),
        MeasureFormat.formatInches(panel.widthM()),
        Rows.number(blankM), MeasureFormat.formatInches(blankM), Rows.number(piece > 0 ? 0 : panel.lowBevelDegrees()),
        Rows.number(piece < pieces - 1 ? 0 : panel.highBevelDegrees()), note.strip(), "");
  }

  private static List<String> closure(String junction, ClosureCut cut, double clearM, Map<String, String> profiles) {
    String bevel = Rows.number(cut.bevelDegrees());
    return List.of(cut.part(), cut.face(), junction, Integer.toString(cut.count()), "", "", Rows.number(clearM),
        MeasureFormat.formatInches(clearM), bevel, bevel, cut.shorter() ? "shorter than can be worked" : "",
        profiles.getOrDefault(junction + ' ' + cut.part(), ""));
  }
}
