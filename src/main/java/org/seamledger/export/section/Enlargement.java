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
  private static final double RADIUS = 25;
  /** On small paper. */
  private static final double SMALL_RADIUS = 17;
  private static final double SMALL_PLACE = 200;
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

  private static double radius(PaperBox place) {
    return place.width() < SMALL_PLACE ? SMALL_RADIUS : RADIUS;
  }

  /** What the circle takes of the place's width. */
  static double width(PaperBox place) {
    return 2 * radius(place) + 6;
  }

  /** Where the circle has room beside the section: in a corner of the place, its foot first. */
  static Optional<Vec2> corner(SectionView view) {
    PaperBox place = view.place();
    PaperRoom room = new PaperRoom(place);
    SectionInk.mark(view, room);
    view.scene().shapes().stream().filter(SectionScene.Shape::area).forEach(s -> room.close(view.paper(s.points())));
    double radius = radius(place);
    double foot = place.bottom() - radius - 7;
    double head = place.top() + radius + 2;
    double left = place.left() + radius + 2;
    double right = place.right() - radius - 3;
    return Stream.of(new Vec2(right, foot), new Vec2(right, head), new Vec2(left, foot), new Vec2(left, head))
        .filter(c -> room.isFree(PaperRoom.square(c, radius + 1)) && room.crossed(PaperRoom.square(c, radius + 4)) == 0).findFirst();
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
    double r = radius(room.place());
    PaperBox box = new PaperBox(at.u() - r, at.v() - r, at.u() + r, at.v() + r);
    SectionView shown = new SectionView(large.scene(), SCALE, big.get(), box);
    svg.open("defs").open("clipPath", "id", "enlarged");
    circle("", at, r, svg);
    svg.close("clipPath").close("defs");
    circle("paper", at, r, svg);
    svg.open("g", "class", "enlarged", "clip-path", "url(#enlarged)");
    figure.forEnlargement().parts(shown, svg);
    svg.close("g");
    circle("enlarge", at, r, svg);
    svg.turned("head", at.plus(new Vec2(0, r + 4.2)), 0, "A   " + Sheet.scale(SCALE));
    room.close(PaperRoom.square(at, r + 0.5));
    room.close(PaperRoom.strip(at.plus(new Vec2(0, r + 4.2)), 0, 20, 3));
    mark(view.paper(small.get()), r / view.denominator(), room, svg);
  }

  private static void mark(Vec2 at, double radius, PaperRoom room, Svg svg) {
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
