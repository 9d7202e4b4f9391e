package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Fastening;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.On;
import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;
import org.seamledger.junction.Junction;
import org.seamledger.measure.Format;
import org.seamledger.measure.Measure;
import org.seamledger.quantity.formula.BeadShape;
import org.seamledger.quantity.formula.FastenerLine;
import org.seamledger.quantity.formula.LappedRun;
import org.seamledger.quantity.formula.Pieces;
import org.seamledger.quantity.layout.LinePiece;

/**
 * Counts what a junction's detail takes: parts, seals and fasteners along its true length, on each of its faces and between their seams.
 * Every figure leaves a line of arithmetic that an estimator can follow.
 */
final class JunctionCounter {

  private final Junction junction;
  private final Detail detail;
  private final RoofSystem system;
  private final LengthText text;
  private final List<Side> sides = new ArrayList<>();
  private final List<MetalLine> metal = new ArrayList<>();
  private final List<SealLine> seals = new ArrayList<>();
  private final List<FastenerRow> fasteners = new ArrayList<>();
  private final List<ClosureCut> closures = new ArrayList<>();
  private final List<String> steps = new ArrayList<>();
  private int seamEndPlugs;
  private int cornerPlugs;

  private JunctionCounter(DetailedJunction detailed, RoofLayout layout, RoofSystem system) {
    this.junction = detailed.junction().junction();
    this.detail = detailed.detail();
    this.system = system;
    this.text = LengthText.of(system);
    for (String face : junction.faces()) {
      sides.add(Side.of(junction, layout.roofFace(face), layout.face(face)));
    }
  }

  static JunctionQuantities count(DetailedJunction detailed, RoofLayout layout, RoofSystem system) {
    JunctionCounter counter = new JunctionCounter(detailed, layout, system);
    counter.detail.metal().forEach(counter::metal);
    counter.detail.seals().forEach(counter::seal);
    counter.detail.fastenings().forEach(counter::fasten);
    return new JunctionQuantities(counter.junction.id(), counter.metal, counter.seals, counter.fasteners, counter.closures,
        counter.seamEndPlugs, counter.cornerPlugs, counter.steps);
  }

  /** Where something lies: on one face, with its pieces between seams, or along the line as a whole. */
  private record Place(String face, List<LinePiece> pieces, int seams) {
    String on() {
      return face.isEmpty() ? "" : " on " + face;
    }
  }

  private List<Place> places(On on) {
    if (on == On.LINE) {
      // Pieces of something that lies along the line are those of the first face.
      return List.of(new Place("", sides.isEmpty() ? List.of() : sides.get(0).pieces(), sides.isEmpty() ? 0 : sides.get(0).seams()));
    }
    return sides.stream().filter(s -> on == On.EACH_FACE || s.below() == (on == On.FACE_BELOW))
        .map(s -> new Place(s.face(), s.pieces(), s.seams())).toList();
  }

  // ---- metal

  private void metal(MetalPart part) {
    for (Place place : places(part.on())) {
      switch (part.run()) {
        case PER_PIECE -> perPiece(part, place);
        case PER_SEAM -> add(part, place, place.seams(), 0, 0, part.part() + place.on() + ": one at each of " + place.seams() + " seams");
        case ONCE, RING, COLLAR, PER_LAP -> add(part, place, 1, 0, 0, part.part() + place.on() + ": 1, made to measure");
        case CONTINUOUS -> lapped(part, place);
      }
    }
  }

  private void add(MetalPart part, Place place, int pieces, double lengthM, int laps, String step) {
    metal.add(new MetalLine(part.part(), place.face(), pieces, lengthM, laps, girth(part)));
    steps.add(step);
  }

  private void perPiece(MetalPart part, Place place) {
    double allowance = system.panel().seamThickness().value();
    double minimum = system.panel().minimumPiece().value();
    List<Double> lengths = new ArrayList<>();
    TreeMap<List<Long>, ClosureCut> cuts = new TreeMap<>((a, b) -> {
      int c = Long.compare(b.get(0), a.get(0));
      return c != 0 ? c : Long.compare(a.get(1), b.get(1));
    });
    for (LinePiece piece : place.pieces()) {
      if (piece.widthM() == 0) {
        continue;
      }
      double net = Pieces.netLength(piece.lengthM(), allowance, piece.psiDegrees());
      lengths.add(net);
      List<Long> key = List.of(Math.round(net * 1e4), Math.round(piece.bevelDegrees() * 100));
      cuts.merge(key, new ClosureCut(part.part(), place.face(), 1, net, piece.bevelDegrees(), net < minimum - 1e-6),
          (x, y) -> new ClosureCut(x.part(), x.face(), x.count() + 1, x.lengthM(), x.bevelDegrees(), x.shorter()));
    }
    closures.addAll(cuts.values());
    cornerPlugs += lengths.isEmpty() ? 0 : 2;
    double sum = lengths.stream().mapToDouble(Double::doubleValue).sum();
    String off = allowance > 0 ? ", less " + system.panel().seamThickness() + " for each seam" : "";
    add(part, place, lengths.size(), sum, 0, part.part() + place.on() + ": " + text.run(junction.lengthM()) + " between seams every "
        + system.panel().coverage() + " along the eave" + off + ": " + lengths.size() + " pieces, " + text.pieces(lengths) + " = "
        + text.run(sum));
  }

  private void lapped(MetalPart part, Place place) {
    LappedRun run = lappedRun();
    String how = run.laps() == 0 ? "in one length" : "in lengths of " + system.flashing().length() + " lapped " + system.flashing().lap()
        + ": " + run.pieces() + " pieces, " + run.laps() + " laps";
    add(part, place, run.pieces(), junction.lengthM(), run.laps(), part.part() + place.on() + ": " + text.run(junction.lengthM()) + " " + how);
  }

  private LappedRun lappedRun() {
    return LappedRun.of(junction.lengthM(), system.flashing().length().value(), system.flashing().lap().value());
  }

  private double girth(MetalPart part) {
    return part.girthM() > 0 ? part.girthM() : system.flashing().girth().value();
  }

  // ---- seals

  private void seal(Seal seal) {
    for (Place place : places(seal.on())) {
      switch (seal.run()) {
        case PER_PIECE -> beadPerPiece(seal, place);
        case PER_SEAM -> plugs(seal, place);
        case PER_LAP -> laps(seal, place);
        case RING -> add(seal, place, seal.lines() * ringM(), name(seal, place) + ": " + seal.lines() + " × " + text.run(ringM())
            + " round the bolt circle");
        case COLLAR -> add(seal, place, seal.lines() * collarM(), name(seal, place) + ": " + seal.lines() + " × " + text.run(collarM())
            + " round the pipe");
        case CONTINUOUS, ONCE -> {
          double length = seal.lines() * junction.lengthM();
          add(seal, place, length, name(seal, place) + ": " + seal.lines() + " × " + text.run(junction.lengthM()) + " = " + text.run(length));
        }
      }
    }
  }

  private static String name(Seal seal, Place place) {
    return seal.form().word() + " " + seal.place() + place.on();
  }

  private void add(Seal seal, Place place, double lengthM, String step) {
    Seal.Form form = seal.run() == Run.PER_LAP && seal.form() == Seal.Form.IN_SEAM && lapsAreTaped() ? Seal.Form.TAPE : seal.form();
    double volume = form == Seal.Form.TAPE ? 0 : lengthM * section(seal);
    seals.add(new SealLine(form, seal.role(), seal.exposure(), seal.place(), place.face(), seal.lines(), seal.run(), lengthM, volume));
    steps.add(volume == 0 ? step : step + "; " + sectionText(seal) + ": " + Format.fixed(volume * 1e6, 1) + " ml");
  }

  private boolean lapsAreTaped() {
    return system.flashing().lapSeal() == RoofSystem.LapSeal.TAPE;
  }

  private void beadPerPiece(Seal seal, Place place) {
    double upstand = system.bead().upstand().value();
    double base = 0;
    int pieces = 0;
    for (LinePiece piece : place.pieces()) {
      if (piece.widthM() > 0) {
        base += piece.lengthM();
        pieces++;
      }
    }
    double length = seal.lines() * base + (double) seal.upstands() * pieces * upstand;
    String up = seal.upstands() == 0 ? "" : " + " + pieces + " × " + seal.upstands() + " × " + system.bead().upstand() + " up the seam legs";
    add(seal, place, length, name(seal, place) + ": " + seal.lines() + " × " + text.run(base) + up + " = " + text.run(length));
  }

  private void plugs(Seal seal, Place place) {
    if (place.seams() == 0) {
      return;
    }
    seamEndPlugs += place.seams();
    double length = (double) seal.lines() * place.seams() * system.bead().upstand().value();
    add(seal, place, length, name(seal, place) + ": " + place.seams() + " seam ends × " + system.bead().upstand() + " = " + text.run(length));
  }

  private void laps(Seal seal, Place place) {
    MetalPart part = detail.metal().stream().filter(m -> m.id().equals(seal.part())).findFirst().orElse(null);
    double girth = part == null ? system.flashing().girth().value() : girth(part);
    int laps = lappedRun().laps();
    if (laps == 0) {
      return;
    }
    double length = seal.lines() * girth * laps;
    add(seal, place, length, name(seal, place) + ": " + laps + " laps × " + seal.lines() + " × girth " + text.part(girth) + " = "
        + text.run(length));
  }

  private double section(Seal seal) {
    return shape(seal).areaM2(size(seal).value());
  }

  private String sectionText(Seal seal) {
    return size(seal) + " " + shape(seal).word().replace('-', ' ');
  }

  private Measure size(Seal seal) {
    return switch (seal.size()) {
      case "bead.receiverSize" -> system.bead().receiverSize();
      case "bead.clampSize" -> system.bead().clampSize();
      default -> system.bead().size();
    };
  }

  private BeadShape shape(Seal seal) {
    return switch (seal.size()) {
      case "bead.receiverSize" -> system.bead().receiverShape();
      case "bead.clampSize" -> system.bead().clampShape();
      default -> system.bead().shape();
    };
  }

  // ---- fasteners

  private void fasten(Fastening fastening) {
    Measure spacing = system.spacing(fastening.spacing());
    for (Place place : places(fastening.on())) {
      for (int line = 0; line < Math.max(1, fastening.lines()); line++) {
        switch (fastening.run()) {
          case PER_PIECE -> fastenPieces(fastening, place, spacing);
          case RING -> fastenRing(fastening, place, ringM(), spacing);
          case COLLAR -> fastenRing(fastening, place, collarM(), spacing);
          case PER_SEAM, PER_LAP, ONCE -> {
            int count = fastening.run() == Run.PER_SEAM ? place.seams() : fastening.run() == Run.PER_LAP ? lappedRun().laps() : 1;
            add(fastening, place, count, 0, 1, fastening.place() + place.on() + ": " + count);
          }
          case CONTINUOUS -> fastenLine(fastening, place, spacing);
        }
      }
    }
  }

  private void add(Fastening f, Place place, int count, double spacingM, double coverage, String step) {
    fasteners.add(new FastenerRow(f.place(), place.face(), count, spacingM, f.throughTape(), f.throughTape() ? coverage : 1));
    steps.add(step);
  }

  private FastenerLine open(double length, Measure spacing) {
    return FastenerLine.open(length, spacing.value(), system.fasteners().endDistance().value(), system.fasteners().minimumPerPiece());
  }

  private double reach() {
    return system.tape().reach().value();
  }

  private void fastenPieces(Fastening f, Place place, Measure spacing) {
    int count = 0;
    double widest = 0;
    double pressed = 0;
    double total = 0;
    TreeMap<Integer, Integer> piecesByCount = new TreeMap<>(java.util.Comparator.reverseOrder());
    for (LinePiece piece : place.pieces()) {
      if (piece.widthM() == 0) {
        continue;
      }
      FastenerLine line = open(piece.lengthM(), spacing);
      count += line.count();
      widest = Math.max(widest, line.spacingM());
      pressed += line.coverage(reach()) * piece.lengthM();
      total += piece.lengthM();
      piecesByCount.merge(line.count(), 1, Integer::sum);
    }
    StringBuilder sum = new StringBuilder();
    piecesByCount.forEach((n, pieces) -> sum.append(sum.isEmpty() ? "" : " + ").append(pieces).append(" × ").append(n));
    add(f, place, count, widest, total == 0 ? 1 : pressed / total, f.place() + place.on() + ": at most " + spacing + " apart, "
        + system.fasteners().endDistance() + " from the ends of each piece: " + sum + " = " + count);
  }

  private void fastenLine(Fastening f, Place place, Measure spacing) {
    FastenerLine line = open(junction.lengthM(), spacing);
    add(f, place, line.count(), line.spacingM(), line.coverage(reach()), f.place() + place.on() + ": (" + text.run(junction.lengthM())
        + " − 2 × " + system.fasteners().endDistance() + ") ÷ " + spacing + ", rounded up, + 1 = " + line.count());
  }

  private void fastenRing(Fastening f, Place place, double perimeter, Measure spacing) {
    FastenerLine line = FastenerLine.closed(perimeter, spacing.value());
    add(f, place, line.count(), line.spacingM(), line.coverage(reach()), f.place() + place.on() + ": " + text.run(perimeter)
        + " round ÷ " + spacing + ", rounded up = " + line.count());
  }

  /** Circle of a boot's fasteners: the outline, wider by the margin all round (exact for an ellipse as for a circle to first order). */
  private double ringM() {
    return junction.lengthM() + 2 * Math.PI * system.pipes().boltCircleMargin().value();
  }

  /** Round the pipe itself, square to it. */
  private double collarM() {
    double diameter = junction.facts().number("diameterM");
    return Double.isNaN(diameter) ? junction.lengthM() : Math.PI * diameter;
  }

}
