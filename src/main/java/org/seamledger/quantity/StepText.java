package org.seamledger.quantity;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.seamledger.detail.Seal;
import org.seamledger.measure.Measure;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.formula.BeadShape;
import org.seamledger.quantity.formula.LappedRun;

/** A line of arithmetic for each figure, that an estimator can follow. Only words: the numbers are the counters'. Lengths in metres. */
final class StepText {

  private final RoofSystem system;
  private final LengthText text;
  private final double lineM;

  StepText(CountedLine line) {
    this.system = line.system();
    this.text = LengthText.of(system);
    this.lineM = line.lengthM();
  }

  private static String at(String what, CountedPlace place) {
    return what + (place.face().isEmpty() ? "" : " on " + place.face()) + ": ";
  }

  private static String at(Seal seal, CountedPlace place) {
    return at(seal.form().word() + " " + seal.place(), place);
  }

  // ---- metal

  String atSeams(String part, CountedPlace place) {
    return at(part, place) + "one at each of " + place.seams() + " seams";
  }

  String made(String part, CountedPlace place) {
    return at(part, place) + "1, made to measure";
  }

  /** @param less how many fewer than intervals there are */
  String intervals(String part, CountedPlace place, double everyM, int less, int count) {
    return at(part, place) + text.run(lineM) + " ÷ " + text.run(everyM) + ", rounded up" + (less > 0 ? ", − " + less : "") + " = " + count;
  }

  String lapped(String part, CountedPlace place, double lengthM, LappedRun run, double lapM) {
    String how = run.laps() == 0 ? "in one length" : "in lengths of " + system.flashing().length() + " lapped "
        + (lapM > system.flashing().lap().value() ? text.part(lapM) : system.flashing().lap().toString())
        + ": " + counted(run.pieces(), "piece") + ", " + counted(run.laps(), "lap");
    return at(part, place) + text.run(lengthM) + " " + how;
  }

  String pieces(String part, CountedPlace place, List<Double> lengths, double sum) {
    String off = system.panel().seamThickness().value() > 0 ? ", less " + system.panel().seamThickness() + " for each seam" : "";
    return at(part, place) + text.run(lineM) + " between seams every " + system.panel().coverage() + " along the eave" + off + ": "
        + counted(lengths.size(), "piece") + ", " + text.pieces(lengths) + " = " + text.run(sum);
  }

  private static String counted(int count, String one) {
    return count + " " + one + (count == 1 ? "" : "s");
  }

  // ---- seals

  String along(Seal seal, CountedPlace place, double once, double length) {
    return at(seal, place) + seal.lines() + " × " + text.run(once) + " = " + text.run(length);
  }

  String round(Seal seal, CountedPlace place, double once, String where) {
    return at(seal, place) + seal.lines() + " × " + text.run(once) + " " + where;
  }

  String perPiece(Seal seal, CountedPlace place, double base, int pieces, double length) {
    String up = seal.upstands() == 0 ? ""
        : " + " + pieces + " × " + seal.upstands() + " × " + system.bead().upstand() + " up the seam legs";
    return at(seal, place) + seal.lines() + " × " + text.run(base) + up + " = " + text.run(length);
  }

  String plugs(Seal seal, CountedPlace place, double length) {
    return at(seal, place) + counted(place.seams(), "seam termination") + " × " + system.bead().upstand() + " = " + text.run(length);
  }

  String laps(Seal seal, CountedPlace place, int laps, double girth, double length) {
    return at(seal, place) + counted(laps, "lap") + " × " + seal.lines() + " × girth " + text.part(girth) + " = " + text.run(length);
  }

  String withVolume(String step, Measure size, BeadShape shape, double volumeM3) {
    return step + "; " + size + " " + shape.word().replace('-', ' ') + ": " + MeasureFormat.fixed(volumeM3 * 1e6, 1) + " ml";
  }

  // ---- fasteners

  String fasteners(String what, CountedPlace place, int count) {
    return at(what, place) + count;
  }

  /** @param piecesByCount how many pieces have so many fasteners each */
  String piecewise(String what, CountedPlace place, Measure spacing, Map<Integer, Integer> piecesByCount, int count) {
    String sum = piecesByCount.entrySet().stream().map(e -> e.getValue() + " × " + e.getKey()).collect(Collectors.joining(" + "));
    return at(what, place) + "spacing at most " + spacing + ", " + system.fasteners().endDistance() + " from the ends of each piece: " + sum
        + " = " + count;
  }

  String line(String what, CountedPlace place, double lengthM, Measure spacing, int count) {
    return at(what, place)
        + "(" + text.run(lengthM) + " − 2 × " + system.fasteners().endDistance() + ") ÷ " + spacing + ", rounded up, + 1 = "
        + count;
  }

  String ring(String what, CountedPlace place, double perimeter, Measure spacing, int count) {
    return at(what, place) + text.run(perimeter) + " round ÷ " + spacing + ", rounded up = " + count;
  }
}
