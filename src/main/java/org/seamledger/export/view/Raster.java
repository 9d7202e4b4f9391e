package org.seamledger.export.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamledger.geometry.Vec3;

/**
 * A picture being drawn through a camera, with the depth of each pixel, so that what is nearer hides what is farther. Drawn at twice the
 * size each way and made smaller at the end, which smooths edges.
 */
final class Raster {

  private static final int FINER = 2;
  /** Nothing nearer to the eye, metres, is drawn. */
  private static final double NEAR = 0.05;
  /** A line lies on a surface and is drawn before it: by metres, and by parts of the distance. */
  private static final double BEFORE_M = 0.02;
  private static final double BEFORE = 0.002;

  private final Camera camera;
  private final Vec3 right;
  private final int width;
  private final int height;
  private final double focal;
  private final int[] rgb;
  /** One by the distance along the view; zero at infinity. */
  private final double[] inverse;

  /** Where a line is drawn: where it can be seen, or where it can't. */
  enum Part {
    SEEN, HIDDEN
  }

  private interface Ink {
    void at(int x, int y);
  }

  Raster(Camera camera, int width, int height, int background) {
    this.camera = camera;
    this.right = camera.right();
    this.width = width * FINER;
    this.height = height * FINER;
    this.focal = this.height / 2.0 / Math.tan(Math.toRadians(camera.fieldOfView() / 2));
    this.rgb = new int[this.width * this.height];
    this.inverse = new double[this.width * this.height];
    Arrays.fill(rgb, background);
  }

  /** The same, to be drawn on further. */
  Raster(Raster other) {
    this.camera = other.camera;
    this.right = other.right;
    this.width = other.width;
    this.height = other.height;
    this.focal = other.focal;
    this.rgb = other.rgb.clone();
    this.inverse = other.inverse.clone();
  }

  /** Whether anything in a sphere can be in the picture; metres. */
  private boolean reaches(Vec3 centre, double radius) {
    double[] c = seen(centre);
    double wide = width / 2.0 / focal;
    double high = height / 2.0 / focal;
    return c[2] + radius > NEAR && Math.abs(c[0]) - wide * c[2] < radius * Math.sqrt(1 + wide * wide)
        && Math.abs(c[1]) - high * c[2] < radius * Math.sqrt(1 + high * high);
  }

  private double[] seen(Vec3 p) {
    Vec3 q = p.minus(camera.eye());
    return new double[] {q.dot(right), q.dot(camera.up()), q.dot(camera.forward())};
  }

  private double[] screen(double[] seen) {
    return new double[] {width / 2.0 + focal * seen[0] / seen[2], height / 2.0 - focal * seen[1] / seen[2]};
  }

  /** Fills a polygon with a colour, shaded by how it turns to the eye and to a light from above. */
  void fill(Flat flat, int colour) {
    if (!reaches(flat.centre(), flat.radius())) {
      return;
    }
    List<double[][]> rings = new ArrayList<>();
    for (List<Vec3> ring : flat.rings()) {
      List<double[]> clipped = clipped(ring);
      if (clipped.size() > 2) {
        rings.add(clipped.stream().map(this::screen).toArray(double[][]::new));
      }
    }
    double[] normal = {flat.normal().dot(right), flat.normal().dot(camera.up()), flat.normal().dot(camera.forward())};
    double distance = flat.normal().dot(flat.rings().get(0).get(0).minus(camera.eye()));
    if (Math.abs(distance) < 1e-6 || rings.isEmpty()) {
      return;
    }
    int shaded = shaded(colour, flat.normal(), distance);
    scan(rings, (x, y) -> {
      double iz = (normal[0] * (x + 0.5 - width / 2.0) - normal[1] * (y + 0.5 - height / 2.0) + normal[2] * focal) / focal / distance;
      int i = y * width + x;
      if (iz > inverse[i]) {
        inverse[i] = iz;
        rgb[i] = shaded;
      }
    });
  }

  private int shaded(int colour, Vec3 normal, double distance) {
    Vec3 n = distance > 0 ? normal.negated() : normal;
    Vec3 light = camera.forward().negated().plus(camera.up().times(0.5)).plus(right.times(-0.8)).unit();
    double shade = 0.62 + 0.24 * Math.max(0, n.dot(light)) + 0.14 * Math.max(0, n.z());
    return mixed(colour, 0, 1 - shade);
  }

  private List<double[]> clipped(List<Vec3> ring) {
    List<double[]> kept = new ArrayList<>();
    for (int i = 0; i < ring.size(); i++) {
      double[] p = seen(ring.get(i));
      double[] q = seen(ring.get((i + 1) % ring.size()));
      if (p[2] >= NEAR) {
        kept.add(p);
      }
      if (p[2] >= NEAR != q[2] >= NEAR) {
        kept.add(between(p, q));
      }
    }
    return kept;
  }

  private static double[] between(double[] p, double[] q) {
    double t = (NEAR - p[2]) / (q[2] - p[2]);
    return new double[] {p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), NEAR};
  }

  /**
   * Draws a line.
   *
   * @param thick pixels of the finished picture
   * @param cover how much of what is under it is hidden, 0 to 1
   */
  void line(Vec3 from, Vec3 to, double thick, int colour, double cover, Part part) {
    double[] p = seen(from);
    double[] q = seen(to);
    if (p[2] < NEAR && q[2] < NEAR || !reaches(from.towards(to, 0.5), from.distance(to) / 2 + 1)) {
      return;
    }
    double[] a = p[2] < NEAR ? between(p, q) : p;
    double[] b = q[2] < NEAR ? between(p, q) : q;
    double[] s = screen(a);
    double[] e = screen(b);
    double length = Math.hypot(e[0] - s[0], e[1] - s[1]);
    if (length < 1e-9) {
      return;
    }
    double half = thick * FINER / 2;
    double ux = (e[0] - s[0]) / length;
    double uy = (e[1] - s[1]) / length;
    double[][] quad = {{s[0] - (ux + uy) * half, s[1] - (uy - ux) * half}, {e[0] + (ux - uy) * half, e[1] + (uy + ux) * half},
        {e[0] + (ux + uy) * half, e[1] + (uy - ux) * half}, {s[0] - (ux - uy) * half, s[1] - (uy + ux) * half}};
    scan(List.of(quad, new double[0][]), (x, y) -> {
      double t = Math.max(0, Math.min(1, ((x + 0.5 - s[0]) * ux + (y + 0.5 - s[1]) * uy) / length));
      double z = 1 / ((1 - t) / a[2] + t / b[2]);
      int i = y * width + x;
      boolean isSeen = inverse[i] * (z * (1 - BEFORE) - BEFORE_M) <= 1;
      if (isSeen == (part == Part.SEEN)) {
        rgb[i] = mixed(rgb[i], colour, cover);
      }
    });
  }

  /** A ring round a point, whatever is before it; pixels of the finished picture. */
  void ring(Vec3 at, double radius, double thick, int colour) {
    double[] p = seen(at);
    if (p[2] < NEAR) {
      return;
    }
    double[] c = screen(p);
    double outer = (radius + thick / 2) * FINER;
    double inner = (radius - thick / 2) * FINER;
    double[][] box = {{c[0] - outer, c[1] - outer}, {c[0] + outer, c[1] - outer}, {c[0] + outer, c[1] + outer},
        {c[0] - outer, c[1] + outer}};
    scan(List.of(box, new double[0][]), (x, y) -> {
      double d = Math.hypot(x + 0.5 - c[0], y + 0.5 - c[1]);
      if (d <= outer && d >= inner) {
        rgb[y * width + x] = colour;
      }
    });
  }

  /** Every pixel whose centre an odd number of the rings go round. */
  private void scan(List<double[][]> rings, Ink ink) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    int corners = 0;
    for (double[][] ring : rings) {
      corners += ring.length;
      for (double[] p : ring) {
        low = Math.min(low, p[1]);
        high = Math.max(high, p[1]);
      }
    }
    double[] cuts = new double[corners];
    int last = (int) Math.min(height - 1, Math.floor(high));
    for (int y = (int) Math.max(0, Math.floor(low)); y <= last; y++) {
      int n = cuts(rings, y + 0.5, cuts);
      Arrays.sort(cuts, 0, n);
      for (int k = 0; k + 1 < n; k += 2) {
        int end = (int) Math.min(width - 1, Math.ceil(cuts[k + 1] - 0.5) - 1);
        for (int x = (int) Math.max(0, Math.ceil(cuts[k] - 0.5)); x <= end; x++) {
          ink.at(x, y);
        }
      }
    }
  }

  private static int cuts(List<double[][]> rings, double y, double[] into) {
    int n = 0;
    for (double[][] ring : rings) {
      for (int i = 0, j = ring.length - 1; i < ring.length; j = i++) {
        double[] p = ring[j];
        double[] q = ring[i];
        if (p[1] > y != q[1] > y) {
          into[n++] = p[0] + (y - p[1]) * (q[0] - p[0]) / (q[1] - p[1]);
        }
      }
    }
    return n;
  }

  private static int mixed(int under, int over, double cover) {
    int mixed = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      double value = (under >> shift & 255) * (1 - cover) + (over >> shift & 255) * cover;
      mixed |= (int) Math.round(value) << shift;
    }
    return mixed;
  }

  /** The finished picture: rows of colours, from the top. */
  int[][] picture() {
    int[][] rows = new int[height / FINER][width / FINER];
    for (int y = 0; y < rows.length; y++) {
      for (int x = 0; x < rows[y].length; x++) {
        int i = FINER * y * width + FINER * x;
        rows[y][x] = mean(rgb[i], rgb[i + 1], rgb[i + width], rgb[i + width + 1]);
      }
    }
    return rows;
  }

  private static int mean(int a, int b, int c, int d) {
    int mean = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      mean |= ((a >> shift & 255) + (b >> shift & 255) + (c >> shift & 255) + (d >> shift & 255) + 2) / 4 << shift;
    }
    return mean;
  }
}
