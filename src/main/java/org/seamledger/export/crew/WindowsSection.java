package org.seamledger.export.crew;

import java.util.List;
import org.seamledger.export.report.Table;
import org.seamledger.export.report.TextPage;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.weather.SealantClass;
import org.seamledger.weather.SealingHour;
import org.seamledger.weather.SealingWindows;

/** Sealing windows as text. */
final class WindowsSection {

  private static final String INDENT = "           ";

  private final SealingWindows windows;
  private final RoofSystem system;
  private final TextPage page;

  WindowsSection(SealingWindows windows, RoofSystem system, TextPage page) {
    this.windows = windows;
    this.system = system;
    this.page = page;
  }

  void write(int days) {
    page.title("Sealing windows");
    page.paragraph("  ", "  ",
        "Weather " + (windows.byHand() ? "" : "from ") + windows.source() + "; colour absorbs " + system.finish().solarAbsorptance()
            + " of the sun, "
            + "radiates " + system.finish().emittance()
            + ". Temperatures of metal are estimates for a level surface: measure the metal itself.");
    page.paragraph("  ", "  ", "By the data sheets of the roof system: beads at " + system.sealant().lowest() + " to "
        + system.sealant().highest() + " air, metal up to " + system.sealant().highestMetal() + ", humidity up to "
        + system.sealant().highestHumidity() + "; tape from " + system.tape().lowest() + "; in seams " + system.inSeam().lowest() + " to "
        + system.inSeam().highest() + "; metal " + system.sealant().dewPointMargin() + " or more above the dew point. Skin after "
        + system.sealant().skinTime() + " and cover after " + system.sealant().holdTime()
        + " at 23 °C and 50 %, longer or shorter by the air's moisture where the sealant cures with it (an estimate).");
    page.paragraph("  ", "  ", "Upright beads: " + WindowWords.upright(windows.upright()) + ".");
    if (windows.byHand()) {
      now(windows.hours().get(0));
    } else {
      for (int day = 1; day <= days && !windows.onDay(day).isEmpty(); day++) {
        day(windows.onDay(day));
      }
    }
  }

  private void now(SealingHour now) {
    page.blank();
    page.line("  air        " + WindowWords.celsius(now.weather().airC()) + ", " + MeasureFormat.fixed(now.weather().humidity() * 100, 0)
        + " % relative humidity, dew point " + WindowWords.celsius(now.dewPointC()));
    page.line("  metal      " + WindowWords.celsius(now.metalC()) + (Double.isNaN(now.weather().metalC()) ? ", estimated" : ", measured")
        + "; " + MeasureFormat.fixed(Math.abs(now.metalC() - now.dewPointC()), 1) + " K "
        + (now.metalC() < now.dewPointC() ? "below" : "above") + " the dew point");
    for (SealantClass c : SealantClass.values()) {
      page.paragraph("  ", "  " + INDENT, WindowWords.name(c) + ": "
          + (now.isOpen(c) ? "yes" : "NO: " + WindowWords.reasons(List.of(now), c)));
    }
    page.paragraph("  ", "  " + INDENT, "a bead gunned now, in this weather throughout: "
        + (Double.isNaN(now.skinHours()) ? "forms no skin" : "skin after " + WindowWords.hours(now.skinHours()))
        + "; look, then cover after "
        + WindowWords.hours(now.capHours()));
  }

  private void day(List<SealingHour> hours) {
    page.blank();
    page.line("  " + hours.get(0).weather().date() + "      air " + range(hours.stream().mapToDouble(h -> h.weather().airC()).toArray())
        + ", metal " + range(hours.stream().mapToDouble(SealingHour::metalC).toArray()) + " °C");
    Table table = new Table("    ", "ll");
    for (SealantClass c : SealantClass.values()) {
      table.row(WindowWords.name(c), WindowWords.stretches(hours, c));
    }
    table.on(page);
    hours.stream().filter(h -> h.isOpen(SealantClass.BEAD)).findFirst().ifPresent(h -> page.paragraph("    ", "    ",
        "a bead gunned at " + WindowWords.clock(h.weather().hour()) + (Double.isNaN(h.skinHours()) ? " forms no skin"
            : " has a skin after " + WindowWords.hours(h.skinHours())) + ", and may be looked at and covered after "
            + WindowWords.hours(h.capHours())));
  }

  private static String range(double... values) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double v : values) {
      low = Double.isNaN(v) ? low : Math.min(low, v);
      high = Double.isNaN(v) ? high : Math.max(high, v);
    }
    return low > high ? "not known" : MeasureFormat.fixed(low, 0) + " to " + MeasureFormat.fixed(high, 0);
  }
}
