package org.seamledger.export.section;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.detail.FastenerType;
import org.seamledger.detail.Fastening;
import org.seamledger.detail.Joins;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.Seal;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;

/** What is counted of each part of a junction's detail, in words for the list on its sheet; empty words where nothing is. */
record SectionCounts(JunctionQuantities counted, DrawingUnits units, Map<String, String> folds) {

  /** What is counted of a junction, and how each of its parts is folded, by the part's name. */
  static SectionCounts of(SectionSubject subject, DrawingUnits units) {
    Map<String, String> folds = new TreeMap<>();
    subject.line().detail().metal().forEach(m -> FoldedPart.of(subject, m).ifPresent(f -> folds.put(m.part(), f.legsWords(units))));
    return new SectionCounts(subject.counted(), units, folds);
  }

  /** The legs of a part in words after its girth; empty where nothing says how it is folded. */
  String fold(MetalPart part) {
    String legs = folds.getOrDefault(part.part(), "");
    return legs.isEmpty() ? "" : ": " + legs;
  }

  String metal(MetalPart part) {
    int pieces = counted.metal().stream().filter(m -> m.part().equals(part.part())).mapToInt(MetalLine::pieces).sum();
    double length = counted.metal().stream().filter(m -> m.part().equals(part.part())).mapToDouble(MetalLine::lengthM).sum();
    if (pieces == 0) {
      return "";
    }
    return "; " + pieces + (pieces == 1 ? " piece" : " pieces") + (length <= 0 ? "" : ", " + units.length(length));
  }

  String seal(Seal seal) {
    double length = counted.seals().stream().filter(s -> s.form() == seal.form() && s.place().equals(seal.place()))
        .mapToDouble(SealLine::lengthM).sum();
    return length > 0 ? "; " + units.length(length) : "";
  }

  /** Count, type and length of each part of a line of fasteners, and what it joins. */
  String fasteners(Fastening fastening) {
    Map<String, Integer> kinds = new LinkedHashMap<>();
    counted.fasteners().stream().filter(f -> f.id().equals(fastening.id()) && f.count() > 0)
        .forEach(f -> kinds.merge(type(f), f.count(), Integer::sum));
    return kinds.isEmpty() ? "; " + fastening.type().label()
        : kinds.entrySet().stream().map(e -> "; " + e.getValue() + " pieces, " + e.getKey()).collect(Collectors.joining());
  }

  /** What the fasteners of a line are: those that are counted, or else what the detail says. */
  FastenerType type(Fastening fastening) {
    return counted.fasteners().stream().filter(f -> f.id().equals(fastening.id()) && f.count() > 0).map(FastenerRow::type).findFirst()
        .orElse(fastening.type());
  }

  /** How long a line's fasteners are drawn, metres: as counted; 0 for wedges, and where no farther than the pan. */
  double drawnM(Fastening fastening) {
    return counted.fasteners().stream().filter(f -> f.id().equals(fastening.id()) && f.count() > 0)
        .filter(f -> f.type() != FastenerType.WEDGE && f.joins() != Joins.PANEL_METAL).mapToDouble(FastenerRow::lengthM).max().orElse(0);
  }

  /** {@code deck screw with a sealing washer 38 mm, panel to deck}. */
  private String type(FastenerRow row) {
    return row.type().label() + " " + units.small(row.lengthM()) + ", " + row.joins().word().replace("-", " to ")
        + (row.slotM() > 0 ? ", in slots of " + units.least(row.slotM()) : "");
  }
}
