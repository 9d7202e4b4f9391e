package org.seamledger.quantity;

import org.seamledger.detail.FastenerType;
import org.seamledger.detail.Fastening;
import org.seamledger.detail.Joins;
import org.seamledger.quantity.formula.Grip;

/** How long the fasteners of a line are, from what they pass through. Embedment is the roof system's: common practice, no source. */
final class FastenerLengths {

  /** Underlayment, metres: a self-adhering membrane of 40 mil (from memory). */
  private static final double UNDERLAYMENT = 0.001;
  /** Malleable flange of a boot with its metal ring, metres: common practice. */
  private static final double BOOT_FLANGE = 0.004;

  private final RoofSystem system;
  private final boolean metric;

  FastenerLengths(RoofSystem system) {
    this.system = system;
    this.metric = LengthText.of(system).metric();
  }

  /** @param joins what the line joins here, which may be more than its detail says: a fixed line */
  double lengthM(Fastening f, Joins joins, FastenerType type) {
    double sheet = system.panel().thickness().value();
    double tape = f.throughTape() ? system.tape().thickness().value() * (1 - system.tape().compression().value()) : 0;
    if (type == FastenerType.WEDGE) {
      return Grip.lengthM(0, system.fasteners().wallEmbedment().value(), metric);
    }
    return switch (joins) {
      case PANEL_METAL, METAL_METAL -> Grip.lengthM(top(f, sheet) + tape + sheet,
          type == FastenerType.RIVET ? Grip.BEHIND_RIVET : Grip.BEHIND_SHEET, metric);
      case METAL_DECK, CLIP_DECK -> Grip.lengthM(2 * sheet + tape + UNDERLAYMENT, system.fasteners().embedment().value(), metric);
      case PANEL_DECK -> Grip.lengthM(3 * sheet + tape + UNDERLAYMENT, system.fasteners().embedment().value(), metric);
      case METAL_WALL -> Grip.lengthM(2 * sheet + tape, system.fasteners().wallEmbedment().value(), metric);
    };
  }

  private static double top(Fastening f, double sheet) {
    return f.id().equals("boot") ? BOOT_FLANGE : sheet;
  }
}
