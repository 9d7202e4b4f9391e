package org.seamledger.export.workbook;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.measure.Unit;

/** Columns of lengths and areas in the chosen units: one each, or one of either where both are. */
final class Lengths {

  private final DrawingUnits units;

  Lengths(DrawingUnits units) {
    this.units = units;
  }

  private record Shown(String sign, Unit unit, boolean isUs) {
  }

  private <T> List<Column<T>> columns(String title, List<Shown> shown, String format, ToDoubleFunction<T> si) {
    List<Column<T>> columns = new ArrayList<>();
    for (Shown s : shown) {
      if (units == DrawingUnits.BOTH || s.isUs() == (units == DrawingUnits.US)) {
        columns.add(Column.number(title + ", " + s.sign(), format, row -> {
          double value = si.applyAsDouble(row);
          return Double.isNaN(value) ? null : s.unit().fromSi(value);
        }));
      }
    }
    return columns;
  }

  /** @param metres not a number for an empty cell */
  <T> List<Column<T>> length(String title, ToDoubleFunction<T> metres) {
    return columns(title, List.of(new Shown("m", Unit.METRE, false), new Shown("ft", Unit.FOOT, true)), Column.THREE, metres);
  }

  <T> List<Column<T>> width(String title, ToDoubleFunction<T> metres) {
    return columns(title, List.of(new Shown("mm", Unit.MILLIMETRE, false), new Shown("in", Unit.INCH, true)), Column.TWO, metres);
  }

  <T> List<Column<T>> area(String title, ToDoubleFunction<T> squareMetres) {
    return columns(title, List.of(new Shown("m²", Unit.SQUARE_METRE, false), new Shown("ft²", Unit.SQUARE_FOOT, true)), Column.TWO,
        squareMetres);
  }
}
