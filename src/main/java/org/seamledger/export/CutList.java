package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.order.PanelLines;
import org.seamledger.order.TrimLines;
import org.seamledger.order.TrimPlan;
import org.seamledger.quantity.ClosureCut;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.PanelCut;
import org.seamledger.quantity.layout.Panel;
import org.seamledger.takeoff.Takeoff;

/** The shop's cut list as comma-separated values: panels as blanks face by face, hem, overhang and setback
 * included; closures junction by junction, to the clear width between seams; trims by the stock length that each piece is cut from. Equal
 * panels and closures share a row. */
public final class CutList {

  private CutList() {
  }

  /** Writes all rows and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    Rows rows = new Rows(out);
    rows.row(List.of("part", "face", "junction", "pieces", "widthM", "widthIn", "lengthM", "lengthIn", "lowBevelDegrees",
        "highBevelDegrees", "note"));
    PanelLines.BlankLength blanks = PanelLines.lengths(takeoff);
    for (PanelCut cut : takeoff.quantities().panels()) {
      rows.row(panel(cut, blanks.of(cut.face(), cut.panel())));
    }
    for (JunctionQuantities junction : takeoff.quantities().byJunction().values()) {
      for (ClosureCut cut : junction.closures()) {
        rows.row(closure(junction.junction(), cut, takeoff.system().clearM(cut)));
      }
    }
    for (TrimPlan plan : TrimLines.plans(takeoff)) {
      trims(plan, rows);
    }
    rows.flush();
  }

  private static void trims(TrimPlan plan, Rows rows) throws IOException {
    for (int bar = 0; bar < plan.bars().size(); bar++) {
      for (int i : plan.bars().get(bar)) {
        TrimPlan.Piece piece = plan.pieces().get(i);
        rows.row(List.of(plan.part(), piece.face(), piece.junction(), "1", Rows.number(plan.girthM()),
            MeasureFormat.formatInches(plan.girthM()), Rows.number(piece.lengthM()), MeasureFormat.formatInches(piece.lengthM()), "0", "0",
            "from stock length " + (bar + 1) + " of " + plan.bars().size()));
      }
    }
  }

  private static List<String> panel(PanelCut cut, double blankM) {
    Panel panel = cut.panel();
    String note = (panel.shaped() ? "to shape, pan " + panel.pan() : "") + (panel.sliver() ? " narrower than can be worked" : "");
    return List.of("panel", cut.face(), "", Integer.toString(cut.count()), Rows.number(panel.widthM()),
        MeasureFormat.formatInches(panel.widthM()),
        Rows.number(blankM), MeasureFormat.formatInches(blankM), Rows.number(panel.lowBevelDegrees()),
        Rows.number(panel.highBevelDegrees()), note.strip());
  }

  private static List<String> closure(String junction, ClosureCut cut, double clearM) {
    String bevel = Rows.number(cut.bevelDegrees());
    return List.of(cut.part(), cut.face(), junction, Integer.toString(cut.count()), "", "", Rows.number(clearM),
        MeasureFormat.formatInches(clearM), bevel, bevel, cut.shorter() ? "shorter than can be worked" : "");
  }
}
