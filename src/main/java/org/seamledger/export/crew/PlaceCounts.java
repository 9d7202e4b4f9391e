package org.seamledger.export.crew;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.detail.Seal;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.wording.FastenerText;
import org.seamledger.measure.Measure;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.SealLine;
import org.seamledger.sequence.CarryUp;

/** What one place takes, in words for who fits it there: {@code 18 × closure}, {@code 126 × screw at 4 in or less}, {@code 2 tubes}. */
public final class PlaceCounts {

  private PlaceCounts() {
  }

  /** Metal, then fasteners, then sealants; net, rolls and tubes those that are opened for this place alone. */
  public static List<String> of(JunctionQuantities quantities, RoofSystem system, DrawingUnits units) {
    List<String> all = new ArrayList<>();
    Map<String, Integer> metal = new LinkedHashMap<>();
    for (MetalLine m : quantities.metal()) {
      metal.merge(m.part(), m.pieces(), Integer::sum);
    }
    metal.forEach((part, n) -> all.add(n + " × " + part));
    Map<String, Integer> fasteners = new LinkedHashMap<>();
    for (FastenerRow f : quantities.fasteners()) {
      fasteners.merge(FastenerText.size(f) + (f.spacingM() > 0 ? " at " + units.small(f.spacingM()) + " or less" : "") + ": " + f.place(),
          f.count(), Integer::sum);
    }
    fasteners.forEach((what, n) -> all.add(n + " × " + what));
    seals(quantities.seals(), system, units, all);
    if (quantities.cornerPlugs() > 0) {
      all.add(quantities.cornerPlugs() + " corner plug" + (quantities.cornerPlugs() == 1 ? "" : "s"));
    }
    return all;
  }

  private static void seals(List<SealLine> seals, RoofSystem system, DrawingUnits units, List<String> all) {
    double tapeM = sum(seals, s -> s.form() == Seal.Form.TAPE, SealLine::lengthM);
    if (tapeM > 0) {
      all.add(units.length(tapeM) + " tape, " + CarryUp.opened(tapeM, system.tape().roll(), "roll"));
    }
    Measure tube = system.bead().cartridge();
    for (Seal.Exposure exposure : Seal.Exposure.values()) {
      double m3 = sum(seals, s -> s.form() == Seal.Form.BEAD && s.exposure() == exposure, SealLine::volumeM3);
      double m = sum(seals, s -> s.form() == Seal.Form.BEAD && s.exposure() == exposure, SealLine::lengthM);
      if (m3 > 0) {
        all.add(units.length(m) + " " + exposure.word() + " bead, " + CarryUp.millilitres(m3) + ", "
            + CarryUp.opened(m3, tube, "tube"));
      }
    }
    double inSeam = sum(seals, s -> s.form() == Seal.Form.IN_SEAM, SealLine::volumeM3);
    if (inSeam > 0) {
      all.add(CarryUp.millilitres(inSeam) + " non-curing sealant, " + CarryUp.opened(inSeam, tube, "tube"));
    }
  }

  private static double sum(List<SealLine> seals, java.util.function.Predicate<SealLine> which,
      java.util.function.ToDoubleFunction<SealLine> value) {
    return seals.stream().filter(which).mapToDouble(value).sum();
  }
}
