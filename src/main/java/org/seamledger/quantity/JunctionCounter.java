package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.Detail;

/**
 * Counts what a junction's detail requires: parts, seals and fasteners along its true length, on each of its faces and between their
 * seams. Every figure leaves a line of arithmetic, in the order in which they are counted.
 */
final class JunctionCounter {

  private JunctionCounter() {
  }

  static JunctionQuantities count(CountedLine line, Detail detail) {
    List<String> steps = new ArrayList<>();
    StepText text = new StepText(line);
    MetalCounter metal = new MetalCounter(line, text, steps);
    detail.metal().forEach(metal::count);
    SealCounter seals = new SealCounter(line, detail.metal(), text, steps);
    detail.seals().forEach(seals::count);
    FastenerCounter fasteners = new FastenerCounter(line, text, steps);
    detail.fastenings().forEach(fasteners::count);
    return new JunctionQuantities(line.junction().id(), metal.metal(), seals.seals(), fasteners.rows(), metal.closures(),
        seals.seamEndPlugs(), metal.cornerPlugs(), steps);
  }
}
