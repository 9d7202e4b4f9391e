package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.sheet.TitleStrip;
import org.seamledger.geometry.Vec2;

/** The places that a detail serves, in the strip at the foot of its sheet, between scale bars and key plan. */
public final class ServedPlaces {

  private static final double ROW = 3.2;
  private static final double COLUMN = 42;

  private ServedPlaces() {
  }

  /** Whether all of them have room on the sheet; where not, the set lists them on the next. */
  public static boolean fit(List<DetailedJunction> served, SheetSetup setup) {
    return served.size() <= room(setup);
  }

  private static int room(SheetSetup setup) {
    PaperBox place = TitleStrip.spare(setup.paper());
    return Math.max(0, (int) (place.width() / COLUMN)) * rows(place);
  }

  private static int rows(PaperBox place) {
    return (int) ((place.height() - 7) / ROW);
  }

  static void draw(List<DetailedJunction> served, SheetSetup setup, Svg svg) {
    PaperBox place = TitleStrip.spare(setup.paper());
    if (place.width() < COLUMN) {
      return;
    }
    double sum = served.stream().mapToDouble(j -> j.junction().junction().lengthM()).sum();
    svg.text("head", new Vec2(place.left(), place.top() + 6), "Serves " + served.size() + (served.size() == 1 ? " place, " : " places, ")
        + setup.units().length(sum));
    List<String> words = new ArrayList<>(served.stream().map(j -> j.junction().junction().id() + "  "
        + setup.units().length(j.junction().junction().lengthM())).toList());
    if (!fit(served, setup)) {
      words = new ArrayList<>(words.subList(0, Math.max(0, room(setup) - 1)));
      words.add("all of them on the next sheet");
    }
    int rows = rows(place);
    for (int i = 0; i < words.size(); i++) {
      svg.text("small", new Vec2(place.left() + i / rows * COLUMN, place.top() + 10.4 + i % rows * ROW), words.get(i));
    }
  }
}
