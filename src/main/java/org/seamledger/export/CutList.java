package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.ClosureCut;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.PanelCut;
import org.seamledger.quantity.layout.Panel;
import org.seamledger.takeoff.Takeoff;

/** The shop's cut list as comma-separated values: panels face by face, then closures junction by junction; equal pieces share a row. */
public final class CutList {

  private CutList() {
  }

  /** Writes all rows and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    Rows rows = new Rows(out);
    rows.row(List.of("part", "face", "junction", "pieces", "widthM", "widthIn", "lengthM", "lengthIn", "lowBevelDegrees",
        "highBevelDegrees", "note"));
    for (PanelCut cut : takeoff.quantities().panels()) {
      rows.row(panel(cut));
    }
    for (JunctionQuantities junction : takeoff.quantities().byJunction().values()) {
      for (ClosureCut cut : junction.closures()) {
        rows.row(closure(junction.junction(), cut));
      }
    }
    rows.flush();
  }

  private static List<String> panel(PanelCut cut) {
    Panel panel = cut.panel();
    String note = (panel.shaped() ? "to shape, pan " + panel.pan() : "") + (panel.sliver() ? " narrower than can be worked" : "");
    return List.of("panel", cut.face(), "", Integer.toString(cut.count()), Rows.number(panel.widthM()),
        MeasureFormat.formatInches(panel.widthM()),
        Rows.number(panel.lengthM()), MeasureFormat.formatInches(panel.lengthM()), Rows.number(panel.lowBevelDegrees()),
        Rows.number(panel.highBevelDegrees()), note.strip());
  }

  private static List<String> closure(String junction, ClosureCut cut) {
    String bevel = Rows.number(cut.bevelDegrees());
    return List.of(cut.part(), cut.face(), junction, Integer.toString(cut.count()), "", "", Rows.number(cut.lengthM()),
        MeasureFormat.formatInches(cut.lengthM()), bevel, bevel, cut.shorter() ? "shorter than can be worked" : "");
  }
}
