package org.seamledger.export.section;

import java.util.List;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.sheet.Units;
import org.seamledger.geometry.Vec2;
import org.seamledger.quantity.RoofSystem;

/**
 * A scene on paper.
 *
 * @param denominator n of the scale 1:n
 * @param centre what of the scene lies in the middle of its place on paper, millimetres at full size
 * @param place of the section on paper
 */
record SectionView(SectionScene scene, double denominator, Vec2 centre, PaperBox place) {

  private static final double[] SCALES = {1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 50};

  /** Paper around the section for numbers and dimensions, and where the place is small. */
  private static final double MARGIN = 18;
  private static final double SMALL_MARGIN = 13;
  private static final double SMALL_PLACE = 200;

  /** Room between sheets that touch, millimetres on paper. */
  private static final double GAP = 0.75;

  /** The greatest scale at which the section has room; sheets that touch are drawn apart by the same width on paper at every scale. */
  public static SectionView fit(RoofSystem system, DetailedJunction detailed, SectionCut cut, Units units, PaperBox place) {
    SectionView view = null;
    double margin = place.width() < SMALL_PLACE ? SMALL_MARGIN : MARGIN;
    for (double n : SCALES) {
      view = at(system, detailed, cut, units, place, n);
      PaperBox extent = view.reach();
      if (extent.width() <= place.width() - 2 * margin && extent.height() <= place.height() - 2 * margin) {
        break;
      }
    }
    return view;
  }

  /** The section at a scale, its middle in the middle of the place. */
  static SectionView at(RoofSystem system, DetailedJunction detailed, SectionCut cut, Units units, PaperBox place, double n) {
    SectionScene scene = SectionFamilies.compose(system, detailed, cut, GAP * n, units);
    List<Vec2> all = scene.shapes().stream().flatMap(s -> s.points().stream()).toList();
    double minX = all.stream().mapToDouble(Vec2::u).min().orElse(0);
    double maxX = all.stream().mapToDouble(Vec2::u).max().orElse(0);
    double minY = all.stream().mapToDouble(Vec2::v).min().orElse(0);
    double maxY = all.stream().mapToDouble(Vec2::v).max().orElse(0);
    return new SectionView(scene, n, new Vec2((minX + maxX) / 2, (minY + maxY) / 2), place);
  }

  /** The same, its drawing where it is, with another place around it. */
  SectionView in(PaperBox other) {
    Vec2 moved = other.middle().minus(place.middle());
    return new SectionView(scene, denominator, centre.plus(new Vec2(moved.u(), -moved.v()).times(denominator)), other);
  }

  /** Where on the sheet the section itself lies. */
  PaperBox reach() {
    List<Vec2> all = scene.shapes().stream().flatMap(s -> s.points().stream()).map(this::paper).toList();
    double left = all.stream().mapToDouble(Vec2::u).min().orElse(place.left());
    double top = all.stream().mapToDouble(Vec2::v).min().orElse(place.top());
    double right = all.stream().mapToDouble(Vec2::u).max().orElse(place.right());
    double bottom = all.stream().mapToDouble(Vec2::v).max().orElse(place.bottom());
    return new PaperBox(left, top, right, bottom);
  }

  /** Where on the sheet the section itself lies: left, top, width, height in millimetres. */
  public String extent() {
    PaperBox at = reach();
    return Svg.number(at.left()) + " " + Svg.number(at.top()) + " " + Svg.number(at.width()) + " " + Svg.number(at.height());
  }

  /** Millimetres on paper from millimetres of the section. */
  public Vec2 paper(Vec2 p) {
    return new Vec2(place.middle().u() + (p.u() - centre.u()) / denominator, place.middle().v() - (p.v() - centre.v()) / denominator);
  }

  /** Points on paper. */
  public List<Vec2> paper(List<Vec2> points) {
    return points.stream().map(this::paper).toList();
  }
}
