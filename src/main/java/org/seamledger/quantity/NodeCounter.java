package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;
import org.seamledger.junction.Facts;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeContent;
import org.seamledger.node.NodeFastening;
import org.seamledger.node.NodePart;
import org.seamledger.node.NodeSeal;
import org.seamledger.quantity.formula.Beads;
import org.seamledger.quantity.system.LapSeal;

/** Counts the pieces, seals and fasteners of one node. Every figure leaves a line of arithmetic. */
final class NodeCounter {

  private final NodeContent content;
  private final Facts facts;
  private final RoofSystem system;
  private final LengthText text;
  private final List<String> steps = new ArrayList<>();

  private NodeCounter(KindedNode node, RoofSystem system) {
    this.content = node.kind().content();
    this.facts = node.facts();
    this.system = system;
    this.text = LengthText.of(system);
  }

  static JunctionQuantities count(KindedNode node, RoofSystem system) {
    NodeCounter counter = new NodeCounter(node, system);
    List<MetalLine> metal = counter.content.parts().stream().filter(p -> p.count(node.facts()) > 0).map(counter::metal).toList();
    List<SealLine> seals = counter.content.seals().stream().filter(s -> counter.pieces(s.of()) > 0).map(counter::seal).toList();
    List<FastenerRow> rows = counter.content.fastenings().stream().filter(f -> counter.pieces(f.of()) > 0).map(counter::fasteners).toList();
    return new JunctionQuantities(node.id(), metal, seals, rows, List.of(), 0, 0, counter.steps);
  }

  private int pieces(String part) {
    return content.pieces(part, facts);
  }

  private MetalLine metal(NodePart part) {
    int count = part.count(facts);
    steps.add(part.part() + ": " + (part.per().isEmpty() ? Integer.toString(count)
        : part.pieces() + " × " + part.per() + " " + MeasureFormat.plain(facts.number(part.per()), 0) + " = " + count));
    return new MetalLine(part.part(), "", count, 0, 0, part.girthM());
  }

  private SealLine seal(NodeSeal seal) {
    int pieces = pieces(seal.of());
    double length = pieces * seal.lines() * seal.lengthM();
    boolean inLap = seal.form() == Seal.Form.IN_SEAM;
    Seal.Form form = inLap && system.flashing().lapSeal() == LapSeal.TAPE ? Seal.Form.TAPE : seal.form();
    double volume = form == Seal.Form.TAPE ? 0
        : Beads.volumeM3(length, SealCounter.shape(seal.size(), system), SealCounter.size(seal.size(), system).value());
    steps.add(form.word() + " " + seal.place() + ": " + pieces + " × " + seal.lines() + " × " + text.part(seal.lengthM()) + " = "
        + text.run(length) + (volume == 0 ? "" : "; " + MeasureFormat.fixed(volume * 1e6, 1) + " ml"));
    return new SealLine(form, seal.role(), seal.exposure(), seal.place(), "", seal.lines(), inLap ? Run.PER_LAP : Run.ONCE, length, volume);
  }

  private FastenerRow fasteners(NodeFastening fastening) {
    int count = pieces(fastening.of()) * fastening.count();
    steps.add(fastening.place() + ": " + pieces(fastening.of()) + " × " + fastening.count() + " = " + count);
    // Pieces at a node lie outside everything else: the heads see the weather.
    return new FastenerRow(fastening.place(), fastening.id(), "", count, 0, false, 1, fastening.joins(), fastening.type(),
        fastening.lengthM(), 0, true);
  }
}
