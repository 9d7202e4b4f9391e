package org.seamledger.order;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.system.UnderlaymentSettings;
import org.seamledger.roof.RoofFace;

/** What goes by the area of faces that have panels: underlayment with its laps, touch-up paint. */
final class FaceLines {

  private FaceLines() {
  }

  static List<OrderLine> of(OrderSource source) {
    LineDraft underlayment = new LineDraft("underlayment", OrderGroup.UNDERLAYMENT, "underlayment", "m2");
    LineDraft touchUp = new LineDraft("touch-up", OrderGroup.SUNDRIES, "touch-up paint in the panels' colour", "m2");
    for (RoofFace face : source.takeoff().faces()) {
      if (!source.takeoff().quantities().layout().face(face.id()).panels().isEmpty()) {
        underlayment.add("", face.id(), face.areaM2());
        touchUp.add("", face.id(), face.areaM2());
      }
    }
    List<OrderLine> lines = new ArrayList<>();
    if (underlayment.isNeeded()) {
      RoofSystem system = source.system();
      lines.add(rolls(underlayment, system.purchase().underlayment()));
      lines.add(touchUp.size("one for " + system.purchase().packs().touchUpArea()).inPacks(0,
          system.purchase().packs().touchUpArea().value(), "bottle"));
    }
    return lines;
  }

  private static OrderLine rolls(LineDraft draft, UnderlaymentSettings u) {
    double covers = (u.rollWidth().value() - u.sideLap().value()) * (u.rollLength().value() - u.endLap().value());
    double roll = u.rollWidth().value() * u.rollLength().value();
    draft.step("a roll of " + u.rollWidth() + " × " + u.rollLength() + " covers " + LineDraft.number(covers) + " m2 of its "
        + LineDraft.number(roll) + " m2, lapped " + u.sideLap() + " and " + u.endLap() + ": laps add "
        + LineDraft.number(100 * (roll / covers - 1)) + " %");
    return draft.size("rolls of " + u.rollWidth() + " × " + u.rollLength()).inPacks(roll / covers - 1, roll, "roll");
  }
}
