package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;
import org.seamledger.measure.Measure;
import org.seamledger.quantity.formula.BeadShape;
import org.seamledger.quantity.formula.Beads;
import org.seamledger.quantity.layout.LinePiece;
import org.seamledger.quantity.system.LapSeal;

/** Counts the lines of sealant of one junction. */
final class SealCounter {

  private final CountedLine line;
  private final RoofSystem system;
  private final List<MetalPart> metal;
  private final StepText text;
  private final List<String> steps;
  private final List<SealLine> seals = new ArrayList<>();
  private int seamEndPlugs;

  SealCounter(CountedLine line, List<MetalPart> metal, StepText text, List<String> steps) {
    this.line = line;
    this.system = line.system();
    this.metal = metal;
    this.text = text;
    this.steps = steps;
  }

  List<SealLine> seals() {
    return seals;
  }

  int seamEndPlugs() {
    return seamEndPlugs;
  }

  void count(Seal seal) {
    for (CountedPlace place : line.places(seal.on())) {
      switch (seal.run()) {
        case PER_PIECE -> perPiece(seal, place);
        case PER_SEAM -> plugs(seal, place);
        case PER_LAP -> laps(seal, place);
        case RING -> add(seal, place, seal.lines() * line.ringM(seal.id()), text.round(seal, place, line.ringM(seal.id()),
            seal.id().equals("plate") ? "round the plate" : "round the fastener circle"));
        case COLLAR -> add(seal, place, seal.lines() * line.collarM(), text.round(seal, place, line.collarM(), "round the pipe"));
        case CONTINUOUS, ONCE, AT_SPACING, AT_INTERVALS, BETWEEN_INTERVALS -> {
          double length = seal.lines() * line.lengthM(seal.id());
          add(seal, place, length, text.along(seal, place, line.lengthM(seal.id()), length));
        }
      }
    }
  }

  private void add(Seal seal, CountedPlace place, double lengthM, String step) {
    boolean taped = seal.run() == Run.PER_LAP && seal.form() == Seal.Form.IN_SEAM && system.flashing().lapSeal() == LapSeal.TAPE;
    Seal.Form form = taped ? Seal.Form.TAPE : seal.form();
    double volume = form == Seal.Form.TAPE ? 0 : Beads.volumeM3(lengthM, shape(seal), size(seal).value());
    seals.add(new SealLine(form, seal.role(), seal.exposure(), seal.place(), place.face(), seal.lines(), seal.run(), lengthM, volume));
    steps.add(volume == 0 ? step : text.withVolume(step, size(seal), shape(seal), volume));
  }

  private void perPiece(Seal seal, CountedPlace place) {
    List<LinePiece> cut = place.cut();
    double base = 0;
    for (LinePiece piece : cut) {
      base += piece.lengthM();
    }
    double length = Beads.lengthM(base, seal.lines(), cut.size(), seal.upstands(), system.bead().upstand().value());
    add(seal, place, length, text.perPiece(seal, place, base, cut.size(), length));
  }

  private void plugs(Seal seal, CountedPlace place) {
    if (place.seams() == 0) {
      return;
    }
    seamEndPlugs += place.seams();
    double length = (double) seal.lines() * place.seams() * system.bead().upstand().value();
    add(seal, place, length, text.plugs(seal, place, length));
  }

  private void laps(Seal seal, CountedPlace place) {
    double girth = metal.stream().filter(m -> m.id().equals(seal.part())).mapToDouble(MetalPart::girthM).filter(g -> g > 0).findFirst()
        .orElse(system.flashing().girth().value());
    double lap = metal.stream().filter(m -> m.id().equals(seal.part())).mapToDouble(MetalPart::lapM).findFirst().orElse(0);
    int laps = line.lapped(seal.part(), lap).laps();
    if (laps == 0) {
      return;
    }
    double length = seal.lines() * girth * laps;
    add(seal, place, length, text.laps(seal, place, laps, girth, length));
  }

  private Measure size(Seal seal) {
    return size(seal.size(), system);
  }

  private BeadShape shape(Seal seal) {
    return shape(seal.size(), system);
  }

  /** The size of bead that a detail or a node names. */
  static Measure size(String name, RoofSystem system) {
    return switch (name) {
      case "bead.receiverSize" -> system.bead().receiverSize();
      case "bead.clampSize" -> system.bead().clampSize();
      default -> system.bead().size();
    };
  }

  /** And its shape. */
  static BeadShape shape(String name, RoofSystem system) {
    return switch (name) {
      case "bead.receiverSize" -> system.bead().receiverShape();
      case "bead.clampSize" -> system.bead().clampShape();
      default -> system.bead().shape();
    };
  }
}
