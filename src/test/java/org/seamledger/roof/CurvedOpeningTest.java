package org.seamledger.roof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamledger.geometry.MeshBuilder;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.junction.JunctionFinder;
import org.seamledger.junction.Scene;
import org.seamledger.progress.Progress;

/** A vault of irregular triangles, and a hole whose north side leaves wedges of them, with more of the vault beyond. */
class CurvedOpeningTest {

  private static final double RADIUS = 6;
  private static final int STEPS = 12;
  private static final double[] ZIGZAG_DEGREES = {0, -1.5, -1.1, -1.5, -1.1, 0};
  private static final double[] STEPPED_DEGREES = {0, -1.5, -1.1, -1.1, -1.1, 0};

  private static final double NORTH = 1.412;

  /** Where the edge between rows 1 and 2 that ends beside the hole crosses its north side, less a millimetre. */
  private static double west() {
    Vec3 a = corner(ZIGZAG_DEGREES, 1, 9);
    Vec3 b = corner(ZIGZAG_DEGREES, 2, 9);
    return a.x() + (b.x() - a.x()) * (NORTH - a.y()) / (b.y() - a.y()) - 0.001;
  }

  private static Vec3 corner(double[] movedDegrees, int row, int k) {
    double moved = k == 0 || k == STEPS ? 0 : movedDegrees[row];
    double a = Math.toRadians(-30 + 5 * k + moved);
    return new Vec3(2 * row, RADIUS * Math.sin(a), RADIUS * Math.cos(a));
  }

  private static List<List<Vec3>> triangles(double[] moved) {
    List<List<Vec3>> all = new ArrayList<>();
    for (int row = 0; row + 1 < moved.length; row++) {
      for (int k = 0; k < STEPS; k++) {
        all.add(List.of(corner(moved, row, k), corner(moved, row + 1, k), corner(moved, row + 1, k + 1)));
        all.add(List.of(corner(moved, row, k), corner(moved, row + 1, k + 1), corner(moved, row, k + 1)));
      }
    }
    return all;
  }

  /** Of each triangle what lies outside the hole in plan, times √(1 + slope²). */
  private static double expectedArea(double[] moved, Region hole) {
    double sum = 0;
    for (List<Vec3> t : triangles(moved)) {
      Vec3 n = t.get(1).minus(t.get(0)).cross(t.get(2).minus(t.get(0)));
      sum += Region.polygon(t.stream().map(p -> new Vec2(p.x(), p.y())).toList()).minus(hole).area() * n.length() / n.z();
    }
    return sum;
  }

  /** Over a metre long and 29 mm wide; one ends a millimetre from the hole's corner, where the rest of its triangle begins. */
  @Test
  void wedgesBesideAHoleStayInTheFace() {
    checkHole(ZIGZAG_DEGREES, west(), NORTH);
  }

  /** What a wedge of a fifth of a square decimetre leaves open at the strip that goes on from it is 6 mm long. */
  @Test
  void whatASliverBesideAHoleLeavesOpenIsNoLine() {
    checkHole(STEPPED_DEGREES, 3, corner(STEPPED_DEGREES, 2, 9).y() - 0.006);
  }

  private static void checkHole(double[] moved, double west, double north) {
    MeshBuilder mesh = new MeshBuilder();
    triangles(moved).forEach(t -> mesh.face(t, List.of()));
    Roof roof = new Scene().roof("vault", List.of(mesh.build()), Scene.box(west, -1, 0, 9, north, 10)).build();
    assertThat(roof.faces()).singleElement().satisfies(f -> {
      assertThat(f.isCurved()).isTrue();
      assertThat(f.areaM2()).isCloseTo(expectedArea(moved, Region.rectangle(west, -1, 9, north)), within(1e-3));
    });
    List<Junction> lines = JunctionFinder.find(roof, Progress.NONE);
    assertThat(lines).as("four sides of the vault, four of the hole").hasSize(8);
    assertThat(lines.stream().filter(j -> Math.abs(j.lengthM() - (9 - west)) < 0.01)).as("long sides of the hole").hasSize(2);
  }
}
