package org.seamledger.export.sheet;

import java.util.List;
import java.util.stream.Stream;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/** The roof in small on each sheet, with what the sheet shows marked on it. */
public final class KeyPlan {

  private final PaperBox place;
  private final List<List<List<Vec3>>> faces;
  private double scale;
  private Vec2 middle;

  /** A key plan of all faces, as large as the place allows. */
  public KeyPlan(SheetSubject roof, PaperBox place) {
    this.place = place;
    faces = roof.facets();
    List<Vec3> all = faces.stream().flatMap(List::stream).flatMap(List::stream).toList();
    double minX = all.stream().mapToDouble(Vec3::x).min().orElse(0);
    double maxX = all.stream().mapToDouble(Vec3::x).max().orElse(1);
    double minY = all.stream().mapToDouble(Vec3::y).min().orElse(0);
    double maxY = all.stream().mapToDouble(Vec3::y).max().orElse(1);
    scale = Math.min(place.width() / Math.max(1e-6, maxX - minX), place.height() / Math.max(1e-6, maxY - minY));
    middle = new Vec2((minX + maxX) / 2, (minY + maxY) / 2);
  }

  /** Where a place of the roof lies in the key plan. */
  public Vec2 paper(double x, double y) {
    return place.middle().plus(new Vec2((x - middle.u()) * scale, -(y - middle.v()) * scale));
  }

  private Vec2 paper(Vec3 p) {
    return paper(p.x(), p.y());
  }

  /** Draws the faces. */
  public void draw(Svg svg) {
    for (List<List<Vec3>> facet : faces) {
      StringBuilder path = new StringBuilder();
      for (List<Vec3> ring : facet) {
        path.append('M').append(Svg.points(ring.stream().map(this::paper).toList())).append("Z ");
      }
      svg.empty("path", "class", "key-face", "d", path.toString().strip());
    }
  }

  /** Marks a line of the roof. */
  public void mark(List<Vec3> path, Svg svg) {
    List<Vec2> points = path.stream().map(this::paper).toList();
    svg.polyline("key-mark", points);
    double long0 = points.stream().mapToDouble(p -> p.distance(points.get(0))).max().orElse(0);
    if (long0 < 3) {
      svg.empty("circle", "class", "key-dot", "cx", Svg.number(points.get(0).u()), "cy", Svg.number(points.get(0).v()), "r", "1.5");
    }
  }

  /** Marks a part of the roof, from its least to its greatest x and y, with a word. */
  public void mark(Vec2 low, Vec2 high, String word, boolean isThis, Svg svg) {
    List<Vec2> corners = Stream.of(new Vec2(low.u(), low.v()), new Vec2(high.u(), low.v()), new Vec2(high.u(), high.v()),
        new Vec2(low.u(), high.v())).map(p -> paper(p.u(), p.v())).toList();
    svg.polygon(isThis ? "key-mark" : "key-part", corners);
    svg.turned("key-word", corners.get(0).towards(corners.get(2), 0.5).plus(new Vec2(0, 0.8)), 0, word);
  }
}
