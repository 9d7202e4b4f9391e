package org.seamledger.quantity;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.detail.Kind;
import org.seamledger.detail.KindedJunction;
import org.seamledger.detail.On;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.formula.Cricket;
import org.seamledger.quantity.formula.LappedRun;
import org.seamledger.quantity.formula.Plate;

/**
 * A junction's line as it is counted: its lengths, its sides, and the laps of what lies along it. Lengths in metres.
 *
 * @param places where something lies at it
 * @param beyondM how far what leads water off reaches beyond each end of the line
 */
record CountedLine(Junction junction, List<JunctionSide> sides, Map<On, List<CountedPlace>> places, RoofSystem system, double beyondM,
    Fixity fixity) {

  /** What is wider than a curb: the pan that leads water past it, and the cleats that hold the panels above over it. */
  private static final Set<String> BEYOND = Set.of("pan", "cleat");
  /** What runs along a cricket's ridge and valleys. */
  private static final Set<String> CRICKET = Set.of("cricket-folds", "cricket-seams");

  /** At the upper side of a curb water is led past it: a pan's width to each side. */
  static CountedLine of(KindedJunction kinded, RoofLayout layout, RoofSystem system, Fixity fixity) {
    Junction junction = kinded.junction();
    boolean atCurb = kinded.type().family() == Kind.Family.PENETRATION && kinded.type().water() == Kind.Water.AGAINST;
    List<JunctionSide> sides =
        junction.faces().stream().map(face -> JunctionSide.of(junction, layout.roofFace(face), layout.face(face))).toList();
    return new CountedLine(junction, sides, CountedPlace.of(sides), system, atCurb ? layout.coverageM(junction.faces()) : 0, fixity);
  }

  List<CountedPlace> places(On on) {
    return places.get(on);
  }

  double lengthM() {
    return junction.lengthM();
  }

  /** Length of a part or of what belongs to it, by its id. */
  double lengthM(String id) {
    if (CRICKET.contains(id)) {
      return cricket().seamM();
    }
    return junction.lengthM() + (BEYOND.contains(id) ? 2 * beyondM : 0);
  }

  private Cricket cricket() {
    double width = junction.facts().number("widthAcrossFallM");
    double slope = junction.facts().number("slopeDegrees");
    return Cricket.behind(Double.isNaN(width) ? junction.lengthM() : width, Double.isNaN(slope) ? 0 : slope);
  }

  /**
   * Of a part that runs along the line in stock lengths.
   *
   * @param leastM its least lap; 0 where the system's holds. No lap is more than half a stock length
   */
  LappedRun lapped(String id, double leastM) {
    return LappedRun.of(lengthM(id), system.flashing().length().value(), lapM(leastM));
  }

  double lapM(double leastM) {
    double stock = system.flashing().length().value();
    return Math.max(system.flashing().lap().value(), Math.min(leastM, stock / 2));
  }

  /** Round what a seal or fastener of this id follows: the plate of a pipe on a seam, or the boot's fastener circle. */
  double ringM(String id) {
    double diameter = collarM() / Math.PI;
    return id.equals("plate") ? Plate.over(diameter, system.plateAllowance()).perimeterM() : ringM();
  }

  /**
   * Fastener circle of a boot's flange: the outline, wider by the margin all round; exact for a circle, and to first order for an ellipse.
   */
  private double ringM() {
    return junction.lengthM() + 2 * Math.PI * system.pipes().fastenerCircleMargin().value();
  }

  /** Round the pipe itself, square to it. */
  double collarM() {
    double diameter = junction.facts().number("diameterM");
    return Double.isNaN(diameter) ? junction.lengthM() : Math.PI * diameter;
  }
}
