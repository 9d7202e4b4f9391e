package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamledger.junction.Scene;

/** Volumes and sections of boxes and pyramids in closed form. */
class MeshTest {

  private static final double EXACT = 0.002;
  private static final Region EVERYTHING = Region.rectangle(-100, -100, 100, 100);
  private static final Mesh BOX = Scene.box(0, 0, 0, 4, 3, 2);

  private static Region level(Mesh mesh, double z, SectionSide side) {
    return mesh.section(Plane.through(new Vec3(0, 0, z), Vec3.Z), EXACT, side, EVERYTHING);
  }

  @Test
  void boxHasItsVolumeAndBounds() {
    assertThat(BOX.isClosed()).isTrue();
    assertThat(BOX.volume()).isCloseTo(24, within(1e-9));
    assertThat(BOX.bounds()).isEqualTo(new Box3(0, 0, 0, 4, 3, 2));
    assertThat(BOX.triangleCount()).isEqualTo(12);
  }

  @Test
  void sectionInAFaceDependsOnTheSide() {
    assertThat(level(BOX, 1, SectionSide.BELOW).area()).isCloseTo(12, within(1e-9));
    assertThat(level(BOX, 2, SectionSide.BELOW).area()).isCloseTo(12, within(1e-9));
    assertThat(level(BOX, 2, SectionSide.ABOVE).isEmpty()).isTrue();
    assertThat(level(BOX, 2.001, SectionSide.BELOW).area()).as("within the coincidence").isCloseTo(12, within(1e-9));
    assertThat(level(BOX, 2.01, SectionSide.BELOW).isEmpty()).isTrue();
    assertThat(level(BOX, 0, SectionSide.BELOW).isEmpty()).isTrue();
    assertThat(level(BOX, 0, SectionSide.ABOVE).area()).isCloseTo(12, within(1e-9));
  }

  /** x = z cuts the box in a rectangle 3 wide and 2·√2 long. */
  @Test
  void slopingSection() {
    Region cut = BOX.section(Plane.through(Vec3.ZERO, new Vec3(-1, 0, 1)), EXACT, SectionSide.BELOW, EVERYTHING);
    assertThat(cut.area()).isCloseTo(3 * 2 * Math.sqrt(2), within(1e-6));
  }

  /** A quarter of the way up a pyramid a section has 9/16 of its base. */
  @Test
  void pyramid() {
    MeshBuilder b = new MeshBuilder().face(Scene.points(0, 0, 0, 0, 6, 0, 6, 6, 0, 6, 0, 0), List.of());
    List<Vec3> base = Scene.points(0, 0, 0, 6, 0, 0, 6, 6, 0, 0, 6, 0);
    for (int i = 0; i < 4; i++) {
      b.triangle(base.get(i), base.get((i + 1) % 4), new Vec3(3, 3, 4));
    }
    Mesh pyramid = b.build();
    assertThat(pyramid.volume()).isCloseTo(36 * 4 / 3.0, within(1e-9));
    assertThat(level(pyramid, 1, SectionSide.BELOW).area()).isCloseTo(36 * 9 / 16.0, within(1e-9));
    assertThat(level(pyramid, 4, SectionSide.BELOW).isEmpty()).as("a point has no area").isTrue();
  }

  @Test
  void openSheetHasNoInside() {
    Mesh sheet = new MeshBuilder().face(Scene.points(0, 0, 1, 4, 0, 1, 4, 3, 1, 0, 3, 1), List.of()).build();
    assertThat(sheet.isClosed()).isFalse();
    assertThat(level(sheet, 1, SectionSide.BELOW).area()).isCloseTo(12, within(1e-9));
    assertThat(level(sheet, 1, SectionSide.ABOVE).isEmpty()).isTrue();
    assertThat(level(sheet, 0.5, SectionSide.BELOW).isEmpty()).isTrue();
  }

  /** A body whose side is left out by less than the coincidence is still cut in closed lines. */
  @Test
  void tornMeshIsJoinedAcrossTheTear() {
    MeshBuilder b = new MeshBuilder();
    for (int t = 0; t < BOX.triangleCount(); t++) {
      Vec3 shift = new Vec3(1e-4 * (t % 3), 0, 0);
      b.triangle(BOX.corner(t, 0).plus(shift), BOX.corner(t, 1).plus(shift), BOX.corner(t, 2).plus(shift));
    }
    assertThat(level(b.build(), 1, SectionSide.BELOW).area()).isCloseTo(12, within(0.01));
  }

  @Test
  void faceWithAHoleKeepsItsArea() {
    Mesh face = new MeshBuilder().face(Scene.points(0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 10, 0),
        List.of(Scene.points(4, 4, 0, 4, 6, 0, 6, 6, 0, 6, 4, 0))).build();
    double twice = 0;
    for (int t = 0; t < face.triangleCount(); t++) {
      twice += face.areaVector(t).z();
    }
    assertThat(twice / 2).isCloseTo(96, within(1e-9));
  }

  @Test
  void degenerateFacesAreNone() {
    MeshBuilder b = new MeshBuilder().triangle(Vec3.ZERO, Vec3.X, Vec3.X)
        .face(Scene.points(0, 0, 0, 1, 0, 0), List.of())
        .face(Scene.points(0, 0, 0, 1, 0, 0, 2, 0, 0, 3, 0, 0), List.of());
    assertThat(b.isEmpty()).isTrue();
    assertThat(b.build().section(Plane.through(Vec3.ZERO, Vec3.Z), EXACT, SectionSide.BELOW, EVERYTHING).isEmpty()).isTrue();
  }

  @Test
  void cornersCloserThanAMicrometreAreOne() {
    CornerIndex corners = new CornerIndex();
    List<Integer> numbers = new ArrayList<>();
    for (double x : new double[] {0, 0.9e-6, 2.5e-6, 1, 1 + 0.9e-6}) {
      numbers.add(corners.indexOf(new Vec3(x, 0, 0)));
    }
    assertThat(numbers).containsExactly(0, 0, 1, 2, 2);
    for (int i = 0; i < 1000; i++) {
      assertThat(corners.indexOf(new Vec3(i, i, i))).isEqualTo(i == 0 ? 0 : i + 2);
    }
    assertThat(corners.indexOf(new Vec3(500, 500, 500))).isEqualTo(502);
  }

  @Test
  void turnedInsideOutItIsTheSameBody() {
    Mesh mirrored = BOX.transformed(new Transform(-1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0));
    assertThat(mirrored.volume()).isCloseTo(24, within(1e-9));
    assertThat(level(mirrored, 1, SectionSide.BELOW).minU()).isEqualTo(-4);
  }

  @Test
  void bodiesOfOneMeshComeApartAndHollowsStay() {
    MeshBuilder b = new MeshBuilder();
    for (Mesh m : List.of(BOX, Scene.box(1, 1, 0.5, 2, 2, 1.5), Scene.box(10, 0, 0, 11, 1, 1))) {
      for (int t = 0; t < m.triangleCount(); t++) {
        b.triangle(m.corner(t, 0), m.corner(t, 1), m.corner(t, 2));
      }
    }
    List<Mesh> bodies = BodySplitter.of(b.build());
    assertThat(bodies).hasSize(2);
    assertThat(level(bodies.get(0), 1, SectionSide.BELOW).area()).as("4 × 3 less the hollow").isCloseTo(11, within(1e-9));
  }
}
