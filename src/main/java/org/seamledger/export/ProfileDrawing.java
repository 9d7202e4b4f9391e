package org.seamledger.export;

import java.util.List;
import org.seamledger.export.section.ProfileSheets;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.takeoff.Takeoff;

/** The trims of a roof as they are folded, a small picture each, as SVG. */
public final class ProfileDrawing {

  private ProfileDrawing() {
  }

  /** Every sheet as SVG text; the same takeoff and setup give the same text. */
  public static List<String> sheets(Takeoff takeoff, SheetSetup setup) {
    return ProfileSheets.draw(takeoff, setup);
  }
}
