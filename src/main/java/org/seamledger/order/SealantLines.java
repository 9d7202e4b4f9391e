package org.seamledger.order;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.Seal;
import org.seamledger.measure.Measure;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.RoofLayout;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.SealLine;
import org.seamledger.quantity.formula.Beads;
import org.seamledger.quantity.system.PackSettings;

/** Tape by length, everything from the gun by volume: exposed and concealed beads and the non-curing sealant are products of their own. */
final class SealantLines {

  private static final double ML = 1e6;

  private final OrderSource source;
  private final RoofSystem system;
  private final LineDraft tape = new LineDraft("tape", OrderGroup.SEALANTS, "sealing tape", "m");
  private final LineDraft concealed = gun("bead-concealed", "gun sealant, concealed beads");
  private final LineDraft exposed = gun("bead-exposed", "gun sealant, exposed beads");
  private final LineDraft nonCuring = gun("non-curing", "non-curing sealant in laps and seam terminations");
  private final LineDraft seams = gun("seam-sealant", "sealant in the seams of faces below the slope limit");

  private SealantLines(OrderSource source) {
    this.source = source;
    this.system = source.system();
  }

  private static LineDraft gun(String id, String item) {
    return new LineDraft(id, OrderGroup.SEALANTS, item, "ml");
  }

  static List<OrderLine> of(OrderSource source) {
    SealantLines s = new SealantLines(source);
    for (JunctionQuantities q : source.counted()) {
      q.seals().forEach(seal -> s.add(q.junction(), seal));
    }
    s.sealedSeams();
    return s.lines();
  }

  private void add(String junction, SealLine seal) {
    LineDraft draft = switch (seal.form()) {
      case TAPE -> tape;
      case IN_SEAM -> nonCuring;
      case BEAD -> seal.exposure() == Seal.Exposure.EXPOSED ? exposed : concealed;
    };
    draft.add(junction, seal.face(), seal.form() == Seal.Form.TAPE ? seal.lengthM() : seal.volumeM3() * ML);
    if (draft != tape) {
      draft.measure("m", seal.lengthM());
    }
  }

  private void sealedSeams() {
    RoofLayout layout = source.takeoff().quantities().layout();
    for (String face : layout.byFace().keySet()) {
      if (layout.seamsSealed(face)) {
        double length = layout.face(face).seamLengthM();
        seams.add("", face, Beads.volumeM3(length, system.bead().shape(), system.bead().size().value()) * ML);
        seams.measure("m", length);
      }
    }
  }

  private List<OrderLine> lines() {
    List<OrderLine> lines = new ArrayList<>();
    if (tape.isNeeded()) {
      lines.add(tape.size(system.tape().thickness() + " × " + system.tape().width()).inPacks(system.waste().tape().value(),
          system.tape().roll().value(), "roll"));
    }
    double bead = system.waste().bead().value();
    gun(concealed, bead, lines);
    gun(exposed, bead, lines);
    gun(nonCuring, bead, lines);
    gun(seams, system.waste().inSeam().value(), lines);
    return lines;
  }

  private void gun(LineDraft draft, double waste, List<OrderLine> lines) {
    if (draft.isNeeded()) {
      PackSettings packs = system.purchase().packs();
      Measure pack = switch (packs.sealant()) {
        case CARTRIDGE -> system.bead().cartridge();
        case SAUSAGE -> packs.sausage();
        case PAIL -> packs.pail();
      };
      draft.step(MeasureFormat.formatBoth(draft.measure("m")) + " of bead take " + MeasureFormat.fixed(draft.net(), 1) + " ml");
      lines.add(draft.size(packs.sealant().name().toLowerCase(java.util.Locale.ROOT) + " of " + pack).inPacks(waste, pack.value() * ML,
          packs.sealant().name().toLowerCase(java.util.Locale.ROOT)));
    }
  }
}
