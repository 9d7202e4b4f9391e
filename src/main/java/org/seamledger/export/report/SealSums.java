package org.seamledger.export.report;

import java.util.Collection;
import java.util.List;
import org.seamledger.detail.Seal;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.SealLine;

/** Sums over what junctions take. */
public final class SealSums {

  private static final double ML_PER_M3 = 1e6;

  private SealSums() {
  }

  public static double lengthM(Collection<JunctionQuantities> junctions, Seal.Form form) {
    return seals(junctions, form).stream().mapToDouble(SealLine::lengthM).sum();
  }

  public static double volumeMl(Collection<JunctionQuantities> junctions, Seal.Form form) {
    return seals(junctions, form).stream().mapToDouble(SealLine::volumeM3).sum() * ML_PER_M3;
  }

  public static int fasteners(Collection<JunctionQuantities> junctions) {
    return junctions.stream().flatMap(j -> j.fasteners().stream()).mapToInt(FastenerRow::count).sum();
  }

  private static List<SealLine> seals(Collection<JunctionQuantities> junctions, Seal.Form form) {
    return junctions.stream().flatMap(j -> j.seals().stream()).filter(seal -> seal.form() == form).toList();
  }
}
