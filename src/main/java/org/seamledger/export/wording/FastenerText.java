package org.seamledger.export.wording;

import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.FastenerRow;

/** A line of fasteners in words. */
public final class FastenerText {

  private FastenerText() {
  }

  /** {@code stitch screw with a sealing washer, 22 mm (7/8 in), panel to metal}. */
  public static String of(FastenerRow row) {
    return size(row) + ", " + joins(row) + (row.slotM() > 0 ? ", in slots " + length(row.slotM()) : "");
  }

  /** {@code stitch screw with a sealing washer, 22 mm (7/8 in)}. */
  public static String size(FastenerRow row) {
    return row.type().label() + ", " + length(row.lengthM());
  }

  private static String joins(FastenerRow row) {
    String[] both = row.joins().word().split("-");
    return both[0] + " to " + both[1];
  }

  private static String length(double metres) {
    return MeasureFormat.formatMillimetres(metres) + " (" + MeasureFormat.formatInches(metres) + ")";
  }
}
