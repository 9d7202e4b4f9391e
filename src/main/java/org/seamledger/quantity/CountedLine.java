package org.seamledger.quantity;

import java.util.List;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.formula.LappedRun;

/** A junction's line as it is counted: its lengths, its sides, and the laps of what lies along it. Lengths in metres. */
record CountedLine(Junction junction, List<JunctionSide> sides, RoofSystem system, Fixity fixity) {

  static CountedLine of(Junction junction, RoofLayout layout, RoofSystem system, Fixity fixity) {
    return new CountedLine(junction,
        junction.faces().stream().map(face -> JunctionSide.of(junction, layout.roofFace(face), layout.face(face))).toList(), system,
        fixity);
  }

  double lengthM() {
    return junction.lengthM();
  }

  /**
   * Of what runs along the line in stock lengths.
   *
   * @param leastM its least lap; 0 where the system's holds. No lap is more than half a stock length
   */
  LappedRun lapped(double leastM) {
    return LappedRun.of(junction.lengthM(), system.flashing().length().value(), lapM(leastM));
  }

  double lapM(double leastM) {
    double stock = system.flashing().length().value();
    return Math.max(system.flashing().lap().value(), Math.min(leastM, stock / 2));
  }

  /**
   * Fastener circle of a boot's flange: the outline, wider by the margin all round; exact for a circle, and to first order for an ellipse.
   */
  double ringM() {
    return junction.lengthM() + 2 * Math.PI * system.pipes().fastenerCircleMargin().value();
  }

  /** Round the pipe itself, square to it. */
  double collarM() {
    double diameter = junction.facts().number("diameterM");
    return Double.isNaN(diameter) ? junction.lengthM() : Math.PI * diameter;
  }
}
