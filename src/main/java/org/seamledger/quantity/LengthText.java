package org.seamledger.quantity;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.measure.Measure;
import org.seamledger.measure.MeasureFormat;

/** Lengths in the words of the system's own units: metric where the panel is, feet and inches otherwise. */
record LengthText(boolean metric) {

  static LengthText of(RoofSystem system) {
    return new LengthText(isMetric(system.panel().coverage()));
  }

  private static boolean isMetric(Measure length) {
    return length.text().endsWith("m");
  }

  /** Long lengths: metres, or feet and inches. */
  String run(double metres) {
    return metric ? MeasureFormat.formatMetres(metres) : MeasureFormat.formatFeetInches(metres);
  }

  /** A size that must not be less: rounded up. */
  String least(double metres) {
    return metric ? MeasureFormat.formatMillimetresUp(metres) : MeasureFormat.formatInchesUp(metres);
  }

  /** Short lengths: millimetres, or inches. */
  String part(double metres) {
    return metric ? MeasureFormat.plain(metres * 1000, 1) + " mm" : MeasureFormat.formatInches(metres);
  }

  /** {@code 27 × 430 mm + 1 × 390 mm}, the longest first. */
  String pieces(List<Double> lengths) {
    Map<Long, Integer> counts = new TreeMap<>(java.util.Comparator.reverseOrder());
    lengths.forEach(l -> counts.merge(Math.round(l * 1e4), 1, Integer::sum));
    return counts.entrySet().stream().map(e -> e.getValue() + " × " + part(e.getKey() / 1e4)).collect(Collectors.joining(" + "));
  }
}
