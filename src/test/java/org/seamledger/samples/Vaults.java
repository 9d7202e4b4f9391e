package org.seamledger.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.seamledger.geometry.Vec3;

/**
 * Curved roofs cut into flat facets, as authoring tools export them.
 *
 * <p>A vault's chord of n equal facets over the angle φ at radius r is n · 2r·sin(φ/2n); the facets of all rows have their corners on
 * the cylinder.
 */
public final class Vaults {

  private static final double THICK = 0.2;

  private Vaults() {
  }

  /**
   * A vault with its axis along X.
   *
   * @param from slope of the surface at the south side, degrees, falling to the south
   * @param to slope at the north side, falling to the north
   * @param facets number of facets from side to side
   * @param rows number of rows of facets along the axis; corners of inner rows are moved along the curve by chance
   * @param depth thickness, metres; zero for a sheet
   */
  public record Vault(double radius, double from, double to, double length, int facets, int rows, double depth) {

    double step() {
      return Math.toRadians(from + to) / facets;
    }

    double arc() {
      return facets * 2 * radius * StrictMath.sin(step() / 2);
    }

    private Vec3 at(double r, double x, double k) {
      double a = -Math.toRadians(from) + step() * k;
      return new Vec3(x, r * StrictMath.sin(a), r * StrictMath.cos(a));
    }

    /** The outer surface as triangles over rows of corners; its own points first, row by row. */
    Shell shell(Random random) {
      List<Vec3> points = new ArrayList<>();
      for (int i = 0; i <= rows; i++) {
        for (int k = 0; k <= facets; k++) {
          boolean inner = i > 0 && i < rows && k > 0 && k < facets;
          points.add(at(radius, length * i / rows, k + (inner ? 0.6 * (random.nextDouble() - 0.5) : 0)));
        }
      }
      List<Shell.Face> faces = new ArrayList<>();
      for (int i = 0; i < rows; i++) {
        for (int k = 0; k < facets; k++) {
          addQuad(i, k, random.nextBoolean(), faces);
        }
      }
      if (depth > 0) {
        close(points, faces);
      }
      return new Shell(points, faces);
    }

    private int corner(int i, int k) {
      return i * (facets + 1) + k;
    }

    private void addQuad(int i, int k, boolean falling, List<Shell.Face> faces) {
      int a = corner(i, k);
      int b = corner(i + 1, k);
      int c = corner(i + 1, k + 1);
      int d = corner(i, k + 1);
      faces.add(new Shell.Face(falling ? List.of(a, b, c) : List.of(a, b, d), List.of()));
      faces.add(new Shell.Face(falling ? List.of(a, c, d) : List.of(b, c, d), List.of()));
    }

    /** The underside in strips, the ends and the sides. */
    private void close(List<Vec3> points, List<Shell.Face> faces) {
      int under = points.size();
      for (int i = 0; i <= 1; i++) {
        for (int k = 0; k <= facets; k++) {
          points.add(at(radius - depth, length * i, k));
        }
      }
      int far = under + facets + 1;
      List<Integer> west = new ArrayList<>();
      List<Integer> east = new ArrayList<>();
      for (int k = 0; k < facets; k++) {
        faces.add(new Shell.Face(List.of(under + k, under + k + 1, far + k + 1, far + k), List.of()));
      }
      for (int k = 0; k <= facets; k++) {
        west.add(corner(0, k));
        east.add(corner(rows, facets - k));
      }
      for (int k = facets; k >= 0; k--) {
        west.add(under + k);
        east.add(far + facets - k);
      }
      faces.add(new Shell.Face(west, List.of()));
      faces.add(new Shell.Face(east, List.of()));
      faces.add(new Shell.Face(side(0, far, under, true), List.of()));
      faces.add(new Shell.Face(side(facets, under + facets, far + facets, false), List.of()));
    }

    private List<Integer> side(int k, int first, int last, boolean south) {
      List<Integer> side = new ArrayList<>();
      for (int i = 0; i <= rows; i++) {
        side.add(corner(south ? i : rows - i, k));
      }
      side.add(south ? first : first);
      side.add(last);
      return side;
    }
  }

  /** A house of one vault; its low sides are eaves, its ends rakes along the curve, and nothing is inside it. */
  public static House vault(Vault v, long seed) {
    Shell shell = v.shell(new Random(seed));
    House house = new House("vault").shell("vault", v.depth() == 0, shell).expectArea(area(shell, 2 * v.rows() * v.facets()));
    house.expect(2, "rake", v.arc(), "n · 2r · sin(φ / 2n)");
    return house.expect(v.from() > 0 ? 1 : 0, "eave", v.length(), "length").expect(v.to() > 0 ? 1 : 0, "eave", v.length(), "length")
        .expect(v.from() < 0 ? 1 : 0, "high-edge", v.length(), "length").expect(v.to() < 0 ? 1 : 0, "high-edge", v.length(), "length");
  }

  /**
   * A dome of triangles round the vertical axis, from the given slope at its foot up; its foot is one eave round it.
   *
   * @param around number of facets round it
   * @param up number of rings of facets, the last one of triangles that meet at the top
   */
  public static House dome(double radius, double slope, int around, int up) {
    return turned("dome", radius * StrictMath.sin(Math.toRadians(slope)), around, up,
        (k) -> radius * StrictMath.sin(Math.toRadians(slope) * (up - k) / up),
        (k) -> radius * StrictMath.cos(Math.toRadians(slope) * (up - k) / up));
  }

  /** A cone round the vertical axis. */
  public static House cone(double radius, Pitch pitch, int around) {
    return turned("cone", radius, around, 1, (k) -> radius * (1 - k), (k) -> 3 + radius * pitch.tan() * k);
  }

  private interface At {
    double ring(int k);
  }

  private static House turned(String name, double foot, int around, int up, At radius, At z) {
    List<Vec3> points = new ArrayList<>();
    for (int k = 0; k < up; k++) {
      for (int i = 0; i < around; i++) {
        double a = 2 * Math.PI * i / around;
        points.add(new Vec3(radius.ring(k) * StrictMath.cos(a), radius.ring(k) * StrictMath.sin(a), z.ring(k)));
      }
    }
    points.add(new Vec3(0, 0, z.ring(up)));
    points.add(new Vec3(0, 0, z.ring(0) - THICK));
    List<Shell.Face> faces = new ArrayList<>();
    for (int i = 0; i < around; i++) {
      int j = (i + 1) % around;
      for (int k = 0; k + 1 < up; k++) {
        faces.add(new Shell.Face(List.of(k * around + i, k * around + j, (k + 1) * around + j), List.of()));
        faces.add(new Shell.Face(List.of(k * around + i, (k + 1) * around + j, (k + 1) * around + i), List.of()));
      }
      faces.add(new Shell.Face(List.of((up - 1) * around + i, (up - 1) * around + j, up * around), List.of()));
      faces.add(new Shell.Face(List.of(j, i, up * around + 1), List.of()));
    }
    Shell shell = new Shell(points, faces);
    double under =
        faces.stream().filter(f -> f.outer().get(2) == up * around + 1).mapToDouble(f -> area(new Shell(points, List.of(f)), 1)).sum();
    return new House(name).shell(name, false, shell).expectArea(area(shell, faces.size()) - under)
        .expect("eave", around * 2 * foot * StrictMath.sin(Math.PI / around), "n · 2r · sin(π/n)");
  }

  /** True area of the first faces of a shell, square metres: half the length of each face's area vector. */
  static double area(Shell shell, int faces) {
    double sum = 0;
    for (Shell.Face f : shell.faces().subList(0, faces)) {
      Vec3 o = shell.points().get(f.outer().get(0));
      Vec3 twice = Vec3.ZERO;
      for (int i = 1; i + 1 < f.outer().size(); i++) {
        twice = twice.plus(shell.points().get(f.outer().get(i)).minus(o).cross(shell.points().get(f.outer().get(i + 1)).minus(o)));
      }
      sum += twice.length() / 2;
    }
    return sum;
  }
}
