package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;

/** The ground of a section: deck, walls, panels, seams, break lines; each kind of area in its hatch. */
final class SectionInk {

  private SectionInk() {
  }

  /** Draws what belongs to no part of the detail; a deck is hatched at 45° to its own top. */
  static void ground(SectionView view, String attribute, Svg svg) {
    TreeSet<Integer> turns = new TreeSet<>();
    view.scene().shapes().stream().filter(s -> s.area() && s.type().equals("deck")).forEach(s -> turns.add(turn(view.paper(s.points()))));
    svg.open("defs");
    turns.forEach(t -> svg.hatch(hatch(t, attribute), 3, 45 - t, "#cfc8ba", "#faf8f4", "M0 1.5H3"));
    svg.close("defs");
    for (SectionScene.Shape s : view.scene().shapes()) {
      if (s.area()) {
        List<Vec2> points = view.paper(s.points());
        boolean isDeck = s.type().equals("deck");
        svg.empty("polygon", "class", s.type(), "points", Svg.points(points), "fill",
            isDeck ? "url(#" + hatch(turn(points), attribute) + ")" : "none");
      }
    }
    for (SectionScene.Shape s : view.scene().shapes()) {
      if (!s.area() && s.part().isEmpty()) {
        svg.polyline(s.type(), view.paper(s.points()));
      }
    }
  }

  private static String hatch(int turn, String attribute) {
    return "deck-" + turn + (attribute.equals("data-part") ? "" : "-enlarged");
  }

  /** Whole degrees, counter-clockwise, by which the longest edge rises. */
  private static int turn(List<Vec2> points) {
    Vec2 longest = new Vec2(1, 0);
    for (int i = 0; i < points.size(); i++) {
      Vec2 edge = points.get((i + 1) % points.size()).minus(points.get(i));
      longest = edge.length() > longest.length() + 1e-6 ? edge : longest;
    }
    int degrees = (int) Math.round(Math.toDegrees(Math.atan2(-longest.v(), longest.u())));
    return Math.floorMod(degrees, 180);
  }

  /** Tells words and leaders what they had better not cross, and break lines, which they may not. */
  static void mark(SectionView view, PaperRoom room) {
    for (SectionScene.Shape s : view.scene().shapes()) {
      List<Vec2> points = view.paper(s.points());
      if (s.type().equals("break")) {
        for (int i = 1; i < points.size(); i++) {
          room.close(points.subList(i - 1, i + 1));
        }
      } else if (!s.area()) {
        room.line(points);
      }
    }
    view.scene().screwPlaces().values().forEach(l -> l.forEach(s -> room.line(List.of(view.paper(s.head()), view.paper(s.point())))));
    List<List<Vec2>> seals = new ArrayList<>();
    view.scene().sealPlaces().values().forEach(l -> l.forEach(seals::addAll));
    for (List<Vec2> seal : seals) {
      List<Vec2> closed = new ArrayList<>(view.paper(seal));
      closed.add(closed.get(0));
      room.line(closed);
    }
  }
}
