package org.seamledger.export.section;

import org.seamledger.detail.Fastening;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;
import org.seamledger.export.sheet.Units;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;

/** What is counted of each part of a junction's detail, in words for the list on its sheet; empty words where nothing is. */
record SectionCounts(JunctionQuantities counted, Units units) {

  String metal(MetalPart part) {
    int pieces = counted.metal().stream().filter(m -> m.part().equals(part.part())).mapToInt(MetalLine::pieces).sum();
    double length = counted.metal().stream().filter(m -> m.part().equals(part.part())).mapToDouble(MetalLine::lengthM).sum();
    if (pieces == 0) {
      return "";
    }
    return "; " + pieces + (pieces == 1 ? " piece" : " pieces") + (part.run() == Run.ONCE ? "" : ", " + units.length(length));
  }

  String seal(Seal seal) {
    double length = counted.seals().stream().filter(s -> s.form() == seal.form() && s.place().equals(seal.place()))
        .mapToDouble(SealLine::lengthM).sum();
    return length > 0 ? "; " + units.length(length) : "";
  }

  String fasteners(Fastening fastening) {
    int count = counted.fasteners().stream().filter(f -> f.place().equals(fastening.place())).mapToInt(FastenerRow::count).sum();
    return count > 0 ? "; " + count + " pieces" : "";
  }
}
