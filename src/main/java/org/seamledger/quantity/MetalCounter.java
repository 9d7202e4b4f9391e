package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.seamledger.detail.MetalPart;
import org.seamledger.measure.Measure;
import org.seamledger.quantity.formula.FastenerLine;
import org.seamledger.quantity.formula.LappedRun;
import org.seamledger.quantity.formula.Pieces;
import org.seamledger.quantity.layout.LinePiece;

/** Counts the metal parts of one junction. */
final class MetalCounter {

  /** Id of the plate that lies under the pan where something is fastened to the pan alone. */
  private static final String BACK_UP = "back-up";

  private final CountedLine line;
  private final RoofSystem system;
  private final StepText text;
  private final List<String> steps;
  private final List<MetalLine> metal = new ArrayList<>();
  private final List<ClosureCut> closures = new ArrayList<>();
  private int cornerPlugs;

  MetalCounter(CountedLine line, StepText text, List<String> steps) {
    this.line = line;
    this.system = line.system();
    this.text = text;
    this.steps = steps;
  }

  List<MetalLine> metal() {
    return metal;
  }

  List<ClosureCut> closures() {
    return closures;
  }

  /** Two at each row of closures: where it meets what stands at its ends. */
  int cornerPlugs() {
    return cornerPlugs;
  }

  void count(MetalPart part) {
    for (CountedPlace place : line.places(part.on())) {
      switch (part.run()) {
        case PER_PIECE -> {
          if (part.id().equals(BACK_UP)) {
            backUp(part, place);
          } else {
            perPiece(part, place);
          }
        }
        case PER_SEAM -> add(part, place, place.seams(), 0, 0, text.atSeams(part.part(), place));
        case ONCE, RING, COLLAR -> add(part, place, 1, 0, 0, text.made(part.part(), place));
        case PER_LAP -> add(part, place, line.lapped(part.id(), part.lapM()).laps(), 0, 0,
            text.fasteners(part.part(), place, line.lapped(part.id(), part.lapM()).laps()) + " laps");
        case AT_SPACING -> atSpacing(part, place);
        case AT_INTERVALS ->
            add(part, place, intervals(part), 0, 0, text.intervals(part.part(), place, system.everyM(part), 0, intervals(part)));
        case BETWEEN_INTERVALS -> add(part, place, intervals(part) - 1, 0, 0,
            text.intervals(part.part(), place, system.everyM(part), 1, intervals(part) - 1));
        case CONTINUOUS -> {
          LappedRun run = line.lapped(part.id(), part.lapM());
          double length = line.lengthM(part.id());
          add(part, place, run.pieces(), length, run.laps(), text.lapped(part.part(), place, length, run, line.lapM(part.lapM())));
        }
      }
    }
  }

  /** One a pan, under its sheet; none where the screws go into the deck, at the panels' fixed line. */
  private void backUp(MetalPart part, CountedPlace place) {
    long count = place.cut().stream().filter(p -> !line.fixity().fixes(line.junction().id(), place.face(), p)).count();
    if (count > 0) {
      add(part, place, (int) count, 0, 0,
          text.fasteners(part.part(), place, (int) count) + ", one a pan that is not fixed to the deck here");
    }
  }

  private void atSpacing(MetalPart part, CountedPlace place) {
    Measure spacing = part.id().equals("bracket") ? system.purchase().gutters().hangerSpacing() : system.fasteners().trimSpacing();
    int count = FastenerLine.open(line.lengthM(part.id()), spacing.value(), system.fasteners().endDistance().value(),
        system.fasteners().minimumPerPiece()).count();
    add(part, place, count, 0, 0, text.line(part.part(), place, line.lengthM(part.id()), spacing, count));
  }

  private int intervals(MetalPart part) {
    return Math.max(1, (int) Math.ceil(line.lengthM() / system.everyM(part) - 1e-6));
  }

  private void add(MetalPart part, CountedPlace place, int pieces, double lengthM, int laps, String step) {
    metal.add(new MetalLine(part.part(), place.face(), pieces, lengthM, laps, girthM(part)));
    steps.add(step);
  }

  private void perPiece(MetalPart part, CountedPlace place) {
    double minimum = system.panel().minimumPiece().value();
    List<Double> lengths = new ArrayList<>();
    TreeMap<List<Long>, ClosureCut> cuts = new TreeMap<>(
        Comparator.comparing((List<Long> key) -> -key.get(0)).thenComparing(key -> key.get(1)));
    for (LinePiece piece : place.cut()) {
      double net = Pieces.netLength(piece.lengthM(), system.panel().seamThickness().value(), piece.psiDegrees());
      lengths.add(net);
      cuts.merge(List.of(Math.round(net * 1e4), Math.round(piece.bevelDegrees() * 100)),
          new ClosureCut(part.part(), place.face(), 1, net, piece.bevelDegrees(), net < minimum - 1e-6),
          (x, y) -> new ClosureCut(x.part(), x.face(), x.count() + 1, x.lengthM(), x.bevelDegrees(), x.shorter()));
    }
    closures.addAll(cuts.values());
    cornerPlugs += lengths.isEmpty() ? 0 : 2;
    double sum = lengths.stream().mapToDouble(Double::doubleValue).sum();
    add(part, place, lengths.size(), sum, 0, text.pieces(part.part(), place, lengths, sum));
  }

  private double girthM(MetalPart part) {
    return part.girthM() > 0 ? part.girthM() : system.flashing().girth().value();
  }
}
