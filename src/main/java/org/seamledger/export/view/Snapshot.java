package org.seamledger.export.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;

/**
 * The picture of a sight: roof and walls shaded, what is concerned in colour, the line thick and red, those that meet its faces dark, and
 * in a corner the whole roof from above with the place ringed.
 */
public final class Snapshot {

  private static final int BACKGROUND = 0xF4F6F8;
  private static final int ROOF = 0xC3CAD3;
  private static final int LIT_ROOF = 0xF2CF87;
  private static final int BODY = 0xE6E2DB;
  private static final int LIT_BODY = 0x9FC3E6;
  private static final int EDGE = 0x7C7F84;
  private static final int LINE = 0x3B4754;
  private static final int NEXT = 0x14284B;
  private static final int RED = 0xD4151B;
  private static final int WHITE = 0xFFFFFF;

  /** Width of the whole picture in relation to the inset's. */
  private static final int INSET = 4;
  /** Where a sight fills this much of the whole, a picture of the whole says nothing more. */
  private static final double NEARLY_ALL = 0.7;

  private final RoofScene scene;
  private final int width;
  private final int height;
  /** The whole roof from above, for the corner of every picture. */
  private Raster plan;

  /**
   * What a picture shows and from where.
   *
   * @param png the picture
   */
  public record Shot(Camera camera, byte[] png) {
  }

  /** @param width of the pictures in pixels; two thirds of it is the height */
  public Snapshot(RoofScene scene, int width) {
    this.scene = scene;
    this.width = width;
    this.height = (int) Math.round(width / Camera.ASPECT);
  }

  public Shot of(Sight sight) {
    Camera camera = new CameraFinder(scene).find(sight);
    Raster raster = new Raster(camera, width, height, BACKGROUND);
    double scale = width / 1200.0;
    surfaces(raster, sight);
    scene.edges().forEach(e -> raster.line(e.from(), e.to(), scale, EDGE, 0.7, Raster.Part.SEEN));
    lines(raster, sight, scale);
    red(raster, sight.line(), scale, 7);
    int[][] picture = raster.picture();
    if (Box3.of(sight.points()).diagonal() < NEARLY_ALL * scene.whole().diagonal()) {
      inset(picture, sight);
    }
    return new Shot(camera, Png.of(picture));
  }

  private void surfaces(Raster raster, Sight sight) {
    for (Flat flat : scene.flats()) {
      boolean isLit = sight.lit().contains(flat.owner());
      raster.fill(flat, flat.isRoof() ? isLit ? LIT_ROOF : ROOF : isLit ? LIT_BODY : BODY);
    }
  }

  private void lines(Raster raster, Sight sight, double scale) {
    Set<String> lit = sight.lit();
    List<List<Vec3>> next = new ArrayList<>();
    for (Junction j : scene.junctions().values()) {
      boolean isNext = j.faces().stream().anyMatch(lit::contains);
      if (isNext) {
        next.add(j.path());
      } else {
        path(raster, j.path(), 1.6 * scale, LINE, 0.8, Raster.Part.SEEN);
      }
    }
    next.forEach(path -> path(raster, path, 3 * scale, NEXT, 1, Raster.Part.SEEN));
  }

  private static void red(Raster raster, List<Vec3> line, double scale, double thick) {
    path(raster, line, thick * scale, RED, 0.4, Raster.Part.HIDDEN);
    path(raster, line, (thick + 5) * scale, WHITE, 0.9, Raster.Part.SEEN);
    path(raster, line, thick * scale, RED, 1, Raster.Part.SEEN);
  }

  private static void path(Raster raster, List<Vec3> path, double thick, int colour, double cover, Raster.Part part) {
    for (int i = 1; i < path.size(); i++) {
      raster.line(path.get(i - 1), path.get(i), thick, colour, cover, part);
    }
  }

  private void inset(int[][] picture, Sight sight) {
    if (plan == null) {
      plan = plan();
    }
    Raster raster = new Raster(plan);
    double scale = width / 1200.0;
    path(raster, sight.line(), 4 * scale, RED, 1, Raster.Part.SEEN);
    path(raster, sight.line(), 4 * scale, RED, 1, Raster.Part.HIDDEN);
    raster.ring(sight.centre(), 16 * scale, 4 * scale, RED);
    place(raster.picture(), picture, (int) Math.round(14 * scale));
  }

  private Raster plan() {
    int w = width / INSET;
    Camera above = Camera.at(Sight.corners(scene.whole()), scene.whole().centre(), new Vec3(0, -1e-9, 1), 1);
    Raster raster = new Raster(above, w, (int) Math.round(w / Camera.ASPECT), WHITE);
    scene.flats().stream().filter(Flat::isRoof).forEach(f -> raster.fill(f, ROOF));
    scene.junctions().values().forEach(j -> path(raster, j.path(), width / 1200.0, LINE, 0.7, Raster.Part.SEEN));
    return raster;
  }

  private static void place(int[][] small, int[][] picture, int margin) {
    int top = picture.length - small.length - margin;
    int left = picture[0].length - small[0].length - margin;
    for (int y = -1; y <= small.length; y++) {
      for (int x = -1; x <= small[0].length; x++) {
        boolean isFrame = y < 0 || x < 0 || y == small.length || x == small[0].length;
        picture[top + y][left + x] = isFrame ? LINE : small[y][x];
      }
    }
  }
}
