package org.seamledger.export.section;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.sheet.SheetSubject;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/**
 * All that a section shows of a result: its sheet is a function of this and of how it is to be set.
 *
 * @param line that is cut, with its detail
 * @param counted for the line
 * @param elements in words, those that meet at the line
 */
record SectionSubject(SheetSubject sheet, RoofSystem system, DetailedJunction line, JunctionQuantities counted, SectionCut cut,
    String elements) {

  static SectionSubject of(Takeoff takeoff, DetailedJunction line) {
    return of(takeoff, line, SheetSubject.of(takeoff), SectionCut.of(takeoff, line));
  }

  /** Of every line of a result, in their order. */
  static List<SectionSubject> all(Takeoff takeoff) {
    SheetSubject sheet = SheetSubject.of(takeoff);
    Map<String, RoofFace> faces = takeoff.faces().stream().collect(Collectors.toMap(RoofFace::id, Function.identity()));
    return takeoff.lines().stream().map(line -> of(takeoff, line, sheet, SectionCut.of(takeoff, line, faces))).toList();
  }

  private static SectionSubject of(Takeoff takeoff, DetailedJunction line, SheetSubject sheet, SectionCut cut) {
    return new SectionSubject(sheet, takeoff.system(), line, takeoff.quantities().byJunction().get(line.junction().junction().id()),
        cut, ElementNames.of(takeoff, line.junction().junction().elements()));
  }
}
