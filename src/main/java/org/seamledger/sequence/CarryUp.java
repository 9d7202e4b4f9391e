package org.seamledger.sequence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.detail.Seal;
import org.seamledger.measure.Measure;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.Quantities;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.SealLine;
import org.seamledger.quantity.layout.Panel;

/**
 * What is carried up for some steps: net, without waste. Whole pieces of metal and fasteners; tape, sealant and underlayment in metres,
 * litres and square metres with the rolls, tubes and rolls that are opened for them.
 */
public record CarryUp(List<Item> items) {

  private static final double ML_PER_M3 = 1e6;

  /** {@code 18 ×} closure; the amount comes with its unit. */
  public record Item(String amount, String what) {
  }

  public CarryUp {
    items = List.copyOf(items);
  }

  /** For steps, each once. */
  public static CarryUp of(List<Step> steps, Quantities quantities) {
    CarryUp.Sum sum = new Sum(quantities);
    steps.forEach(sum::add);
    return new CarryUp(sum.items());
  }

  /** {@code 2 rolls}: how many that hold so much each are opened for an amount, at least one. */
  public static String opened(double amount, Measure each, String noun) {
    long up = Math.max(1, (long) Math.ceil(amount / each.value() - 1e-9));
    return up + " " + noun + (up == 1 ? "" : "s");
  }

  /** {@code 59 ml} of a volume in cubic metres. */
  public static String millilitres(double m3) {
    return MeasureFormat.fixed(m3 * ML_PER_M3, 0) + " ml";
  }

  private static final class Sum {

    private final RoofSystem system;
    private final Map<String, Integer> pieces = new TreeMap<>();
    private final Map<String, Integer> fasteners = new TreeMap<>();
    private double tapeM;
    private double concealedM3;
    private double exposedM3;
    private double inSeamM3;
    private double underlaymentM2;
    private int panels;
    private double longestPanelM;

    Sum(Quantities quantities) {
      this.system = quantities.system();
    }

    void add(Step step) {
      for (MetalLine m : step.metal()) {
        pieces.merge(m.part(), m.pieces(), Integer::sum);
      }
      for (FastenerRow f : step.fasteners()) {
        fasteners.merge(f.type().label() + ", " + length(f.lengthM()), f.count(), Integer::sum);
      }
      step.seals().forEach(this::seal);
      if (step.work().per() == Work.Per.FACE_AREA && step.work().rate() == Rate.UNDERLAYMENT) {
        underlaymentM2 += step.amount();
      }
      panels += step.panels().size();
      longestPanelM = Math.max(longestPanelM, step.panels().stream().mapToDouble(Panel::lengthM).max().orElse(0));
    }

    private void seal(SealLine s) {
      if (s.form() == Seal.Form.TAPE) {
        tapeM += s.lengthM();
      } else if (s.form() == Seal.Form.IN_SEAM) {
        inSeamM3 += s.volumeM3();
      } else if (s.exposure() == Seal.Exposure.EXPOSED) {
        exposedM3 += s.volumeM3();
      } else {
        concealedM3 += s.volumeM3();
      }
    }

    List<Item> items() {
      List<Item> all = new ArrayList<>();
      if (underlaymentM2 > 0) {
        all.add(new Item(MeasureFormat.fixed(underlaymentM2, 1) + " m²", "underlayment, without laps"));
      }
      if (panels > 0) {
        all.add(new Item(panels + " ×", "panels, the longest " + MeasureFormat.formatMetres(longestPanelM)));
      }
      pieces.forEach((part, n) -> all.add(new Item(n + " ×", part)));
      fasteners.forEach((type, n) -> all.add(new Item(n + " ×", type)));
      if (tapeM > 0) {
        all.add(new Item(MeasureFormat.formatMetres(tapeM), "tape, " + opened(tapeM, system.tape().roll(), "roll")));
      }
      sealant(all, "gun sealant, concealed beads", concealedM3);
      sealant(all, "gun sealant, exposed beads", exposedM3);
      sealant(all, "non-curing sealant, laps and seam terminations", inSeamM3);
      return all;
    }

    private void sealant(List<Item> all, String what, double m3) {
      if (m3 > 0) {
        all.add(new Item(millilitres(m3), what + ", " + opened(m3, system.bead().cartridge(), "tube")));
      }
    }

    private static String length(double metres) {
      return MeasureFormat.formatMillimetres(metres) + " (" + MeasureFormat.formatInches(metres) + ")";
    }
  }
}
