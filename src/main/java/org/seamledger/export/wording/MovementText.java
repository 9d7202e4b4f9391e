package org.seamledger.export.wording;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.FixedLine;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.FixedPanel;
import org.seamledger.quantity.PanelEnd;
import org.seamledger.takeoff.Takeoff;

/** Fixed lines and movement of panels in words. */
public final class MovementText {

  private MovementText() {
  }

  /** A line of text for each face and end whose panels end at a junction. */
  public static List<String> at(String junction, Takeoff takeoff) {
    List<String> lines = new ArrayList<>();
    for (String face : takeoff.quantities().fixity().panels().stream().map(FixedPanel::face).distinct().toList()) {
      List<FixedPanel> panels = takeoff.quantities().fixity().of(face);
      add(lines, face, "low end", panels.stream().filter(p -> p.low().junctions().contains(junction)).toList(), FixedLine.LOW_END);
      add(lines, face, "high end", panels.stream().filter(p -> p.high().junctions().contains(junction)).toList(), FixedLine.HIGH_END);
    }
    return lines;
  }

  private static void add(List<String> lines, String face, String end, List<FixedPanel> panels, FixedLine here) {
    if (panels.isEmpty()) {
      return;
    }
    List<FixedPanel> free = panels.stream().filter(p -> p.fixed() != here && p.fixed() != FixedLine.NONE).toList();
    long fixed = panels.stream().filter(p -> p.fixed() == here).count();
    long none = panels.size() - fixed - free.size();
    String text = face + ", " + end + ": " + (fixed > 0 ? fixed + " fixed here" : "none fixed here");
    if (!free.isEmpty()) {
      PanelEnd most = free.stream().map(p -> here == FixedLine.LOW_END ? p.low() : p.high())
          .max((a, b) -> Double.compare(a.movementM(), b.movementM())).orElseThrow();
      text += "; " + free.size() + " free: gap at installation " + least(most.growM()) + " or more, opens by up to "
          + millimetres(most.shrinkM()) + ", slots " + least(most.slotM());
    }
    lines.add(text + (none > 0 ? "; " + none + " without exactly one fixed line" : ""));
  }

  /** What must not be less, rounded up. */
  private static String least(double metres) {
    return MeasureFormat.formatMillimetresUp(metres) + " (" + MeasureFormat.formatInchesUp(metres) + ")";
  }

  static String millimetres(double metres) {
    return MeasureFormat.formatMillimetres(metres) + " (" + MeasureFormat.formatInches(metres) + ")";
  }
}
