package org.seamledger.export.section;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.seamledger.detail.Seal;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;

/** A circle at full size beside a section whose scale is too small to read its tape. */
final class Enlargement {

  /** From this scale on tape of 3/16 in is hardly wider than a line: room is made for a circle. */
  static final double FROM = 4;
  /** From this scale on a circle helps where there is room for it. */
  static final double WANTED = 2.5;
  static final double RADIUS = 25;
  /** What the circle and its words take of the figure's width. */
  static final double WIDTH = 2 * RADIUS + 6;
  private static final double SCALE = 1;

  private Enlargement() {
  }

  /** The place of the scene that is enlarged: its first tape, or else its first bead. */
  static Optional<Vec2> centre(SectionScene scene) {
    for (Seal.Form form : List.of(Seal.Form.TAPE, Seal.Form.BEAD)) {
      for (Seal seal : scene.detail().seals()) {
        List<List<List<Vec2>>> places = scene.sealPlaces().getOrDefault(seal.id(), List.of());
        if (seal.form() == form && !places.isEmpty() && !places.get(0).isEmpty()) {
          return Optional.of(SealMarks.middle(places.get(0).get(0)));
        }
      }
    }
    return Optional.empty();
  }

  /** Where the circle has room beside the section: in a corner of the place, its foot first. */
  static Optional<Vec2> corner(SectionView view) {
    PaperBox place = view.place();
    PaperRoom room = new PaperRoom(place);
    SectionInk.mark(view, room);
    view.scene().shapes().stream().filter(SectionScene.Shape::area).forEach(s -> room.close(view.paper(s.points())));
    double foot = place.bottom() - RADIUS - 7;
    double head = place.top() + RADIUS + 2;
    double left = place.left() + RADIUS + 2;
    double right = place.right() - WIDTH / 2;
    return Stream.of(new Vec2(right, foot), new Vec2(right, head), new Vec2(left, foot), new Vec2(left, head))
        .filter(c -> room.isFree(PaperRoom.square(c, RADIUS + 1)) && room.crossed(PaperRoom.square(c, RADIUS + 6)) == 0).findFirst();
  }

  /**
   * Draws the circle in a free corner, and its mark in the section; nothing where no corner is free.
   *
   * @param large the same section composed at the circle's scale
   */
  static void draw(SectionFigure figure, SectionView view, SectionView large, PaperRoom room, Svg svg) {
    Optional<Vec2> small = centre(view.scene());
    Optional<Vec2> big = centre(large.scene());
    if (small.isEmpty() || big.isEmpty()) {
      return;
    }
    Optional<Vec2> corner = corner(view.in(room.place()));
    if (corner.isEmpty()) {
      return;
    }
    Vec2 at = corner.get();
    PaperBox box = new PaperBox(at.u() - RADIUS, at.v() - RADIUS, at.u() + RADIUS, at.v() + RADIUS);
    SectionView shown = new SectionView(large.scene(), SCALE, big.get(), box);
    svg.open("defs").open("clipPath", "id", "enlarged");
    circle("", at, RADIUS, svg);
    svg.close("clipPath").close("defs");
    circle("paper", at, RADIUS, svg);
    svg.open("g", "class", "enlarged", "clip-path", "url(#enlarged)");
    figure.forEnlargement().parts(shown, svg);
    svg.close("g");
    circle("enlarge", at, RADIUS, svg);
    svg.turned("head", at.plus(new Vec2(0, RADIUS + 4.2)), 0, "A   " + Sheet.scale(SCALE));
    room.close(PaperRoom.square(at, RADIUS + 0.5));
    room.close(PaperRoom.strip(at.plus(new Vec2(0, RADIUS + 4.2)), 0, 20, 3));
    mark(view, view.paper(small.get()), room, svg);
  }

  private static void mark(SectionView view, Vec2 at, PaperRoom room, Svg svg) {
    double radius = RADIUS / view.denominator();
    circle("enlarge", at, radius, svg);
    for (int i = 0; i < 16; i++) {
      double turn = Math.PI * (i * 5 % 16) / 8;
      Vec2 foot = at.plus(new Vec2(Math.cos(turn), Math.sin(turn)).times(radius + 2.4)).plus(new Vec2(0, 1));
      List<Vec2> strip = PaperRoom.strip(foot, 0, 3, 3);
      if (room.isFree(strip) && (i == 15 || room.crossed(strip) == 0)) {
        svg.turned("head", foot, 0, "A");
        room.close(strip);
        return;
      }
    }
  }

  private static void circle(String type, Vec2 at, double radius, Svg svg) {
    svg.empty("circle", "class", type, "cx", Svg.number(at.u()), "cy", Svg.number(at.v()), "r", Svg.number(radius));
  }
}
