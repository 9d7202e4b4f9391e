package org.seamledger.export.section;

import java.util.List;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.quantity.RoofSystem;

/**
 * A scene on paper.
 *
 * @param denominator n of the scale 1:n
 * @param centre what of the scene lies in the middle of its place on paper, millimetres at full size
 */
public record SectionView(SectionScene scene, double denominator, Vec2 centre) {

  private static final double[] SCALES = {1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20, 50};

  /** Paper for the section itself, millimetres. */
  private static final Vec2 MIDDLE = new Vec2(210, 126);

  private static final double ROOM_WIDTH = 226;

  private static final double ROOM_HEIGHT = 172;

  /** Room between sheets that touch, millimetres on paper. */
  private static final double GAP = 0.75;

  /** The greatest scale at which the section has room; sheets that touch are drawn apart by the same width on paper at every scale. */
  public static SectionView fit(RoofSystem system, DetailedJunction detailed, SectionCut cut) {
    SectionView view = null;
    for (double n : SCALES) {
      SectionScene scene = SectionFamilies.compose(system, detailed, cut, GAP * n);
      List<Vec2> all = scene.shapes().stream().flatMap(s -> s.points().stream()).toList();
      double minX = all.stream().mapToDouble(Vec2::u).min().orElse(0);
      double maxX = all.stream().mapToDouble(Vec2::u).max().orElse(0);
      double minY = all.stream().mapToDouble(Vec2::v).min().orElse(0);
      double maxY = all.stream().mapToDouble(Vec2::v).max().orElse(0);
      view = new SectionView(scene, n, new Vec2((minX + maxX) / 2, (minY + maxY) / 2));
      if (maxX - minX <= ROOM_WIDTH * n && maxY - minY <= ROOM_HEIGHT * n) {
        break;
      }
    }
    return view;
  }

  /** Where on the sheet the section itself lies: left, top, width, height in millimetres. */
  public String extent() {
    List<Vec2> all = scene.shapes().stream().flatMap(s -> s.points().stream()).map(this::paper).toList();
    double left = all.stream().mapToDouble(Vec2::u).min().orElse(0);
    double top = all.stream().mapToDouble(Vec2::v).min().orElse(0);
    double right = all.stream().mapToDouble(Vec2::u).max().orElse(Sheet.WIDTH);
    double bottom = all.stream().mapToDouble(Vec2::v).max().orElse(Sheet.HEIGHT);
    return Svg.number(left) + " " + Svg.number(top) + " " + Svg.number(right - left) + " " + Svg.number(bottom - top);
  }

  /** Millimetres on paper from millimetres of the section. */
  public Vec2 paper(Vec2 p) {
    return new Vec2(MIDDLE.u() + (p.u() - centre.u()) / denominator, MIDDLE.v() - (p.v() - centre.v()) / denominator);
  }

  /** Points on paper. */
  public List<Vec2> paper(List<Vec2> points) {
    return points.stream().map(this::paper).toList();
  }
}
