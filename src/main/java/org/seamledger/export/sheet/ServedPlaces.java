package org.seamledger.export.sheet;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec2;

/** The places that a detail serves, in the strip at the foot of its sheet, between scale bars and key plan. */
public final class ServedPlaces {

  private static final double ROW = 3.2;
  private static final double COLUMN = 50;

  private ServedPlaces() {
  }

  /** Whether so many have room on a sheet; where not, the set lists them on the next. */
  public static boolean fit(int places, SheetSetup setup) {
    return places <= room(setup);
  }

  private static int room(SheetSetup setup) {
    PaperBox place = TitleStrip.spare(setup.paper());
    return (int) (place.width() / COLUMN) * rows(place);
  }

  private static int rows(PaperBox place) {
    return (int) ((place.height() - 11) / ROW);
  }

  /** Draws a head and a row of words for each place, as far as there is room. */
  public static void draw(String head, List<String> places, SheetSetup setup, Svg svg) {
    PaperBox place = TitleStrip.spare(setup.paper());
    if (place.width() < COLUMN) {
      return;
    }
    svg.text("head", new Vec2(place.left(), place.top() + 6), head);
    List<String> words = new ArrayList<>(places);
    if (!fit(places.size(), setup)) {
      words = new ArrayList<>(words.subList(0, room(setup) - 1));
      words.add("all of them on the next sheet");
    }
    int rows = rows(place);
    for (int i = 0; i < words.size(); i++) {
      svg.text("fine", new Vec2(place.left() + i / rows * COLUMN, place.top() + 10.4 + i % rows * ROW), words.get(i));
    }
  }
}
