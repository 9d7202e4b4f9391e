package org.seamledger.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/**
 * Models that were moved on purpose: the finding must name the movement back. A house is twenty elements of differing size in a box of
 * 20 m by 12 m by 9 m; expected numbers are the movement made, turned round.
 */
@Tag("slow")
class ModelAlignmentTest {

  private static final Vec3 NORTH = Vec3.Y;

  private static List<Mark> house(String idPrefix) {
    Random random = new Random(7);
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      double x = random.nextDouble() * 18;
      double y = random.nextDouble() * 10;
      double z = random.nextInt(3) * 3;
      marks.add(new Mark(idPrefix + i, i % 2 == 0 ? "IfcWall" : "IfcColumn", false,
          new Box3(x, y, z, x + 0.3 + random.nextDouble() * 2, y + 0.2 + random.nextDouble() * 2, z + 2 + random.nextDouble())));
    }
    return marks;
  }

  private static List<Mark> moved(List<Mark> marks, RigidTransform m) {
    return marks.stream().map(k -> new Mark(k.id(), k.kind(), k.service(), Matches.turned(k.box(), m.transform()))).toList();
  }

  private static Footprint model(String name, List<Mark> marks, Map<String, Double> storeys, Map<String, Transform> anchors, Vec3 north) {
    boolean roof = name.equals("a");
    return new Footprint(name, marks,
        roof ? List.of(new Footprint.Slope(Vec3.Z, new Vec3(0, 0, 9), new Box3(0, 0, 8, 20, 12, 9))) : List.of(),
        storeys, anchors, Optional.ofNullable(north), Optional.empty(), Transform.IDENTITY);
  }

  private static Footprint model(String name, List<Mark> marks) {
    return model(name, marks, Map.of(), Map.of(), null);
  }

  private static List<Finding> between(Footprint a, Footprint b) {
    return ModelAlignment.findings(List.of(a, b), Vec3.ZERO);
  }

  private static String only(Footprint a, Footprint b) {
    List<Finding> findings = between(a, b);
    assertThat(findings).extracting(Finding::code).containsExactly("models/misplaced");
    return findings.get(0).message();
  }

  @Test
  void modelsThatFitAreLeftAlone() {
    assertThat(between(model("a", house("i")), model("b", house("i")))).isEmpty();
    assertThat(between(model("a", house("i")), model("b", house("other")))).isEmpty();
  }

  /** Moved by M, a model goes back by the movement with the turn reversed: shift = −R⁻¹·M. Both with the same GlobalIds and without. */
  @ParameterizedTest
  @CsvSource({"40, 0, 0, 0, x -40 m; y 0 m; z 0 m", "0.8, 0, 0, 0, x -0.8 m; y 0 m; z 0 m",
      "30, 7, 2, 90, turned by -90°; x -7 m; y +30 m; z -2 m",
      "0, 0, 0, 180, turned by 180°; x 0 m", "5, 5, 0, -90, turned by 90°; x +5 m; y -5 m"})
  void shiftsAndQuarterTurns(double dx, double dy, double dz, double degrees, String words) {
    RigidTransform m = new RigidTransform(1, degrees, new Vec3(dx, dy, dz));
    for (String prefix : List.of("i", "other")) {
      String message = only(model("a", house("i")), model("b", moved(house(prefix), m)));
      assertThat(message).contains("Very likely").contains(words.split("; "));
    }
  }

  /** The heights of a survey datum: 112.4 m. */
  @Test
  void anotherLevel() {
    assertThat(only(model("a", house("i")), model("b", moved(house("other"), new RigidTransform(1, 0, new Vec3(0, 0, 112.4))))))
        .contains("112.4 m", "z -112.4 m", "heights count from another level").contains("does not overlap");
  }

  /** Turned by 23.5° between true norths; boxes along the axes then say nothing of plan sizes, heights and places must do. */
  @Test
  void trueNorth() {
    RigidTransform m = new RigidTransform(1, 23.5, new Vec3(60, 20, 0));
    List<Mark> posts =
        house("i").stream().map(k -> new Mark(k.id(), k.kind(), false, new Box3(k.box().minX(), k.box().minY(), k.box().minZ(),
            k.box().minX() + 0.3, k.box().minY() + 0.3, k.box().maxZ()))).toList();
    Footprint b =
        model("b", moved(posts, m).stream().map(k -> new Mark("x" + k.id(), k.kind(), false, k.box())).toList(), Map.of(), Map.of(),
            m.transform().applyDirection(NORTH));
    assertThat(only(model("a", posts, Map.of(), Map.of(), NORTH), b)).contains("turned by -23.5°", "between their true norths");
  }

  /** The same GlobalIds tell any turn. */
  @Test
  void anyTurnOfTheSameElements() {
    List<Mark> posts =
        house("i").stream().map(k -> new Mark(k.id(), k.kind(), false, new Box3(k.box().minX(), k.box().minY(), k.box().minZ(),
            k.box().minX() + 0.3, k.box().minY() + 0.3, k.box().maxZ()))).toList();
    assertThat(only(model("a", posts), model("b", moved(posts, new RigidTransform(1, 11.25, new Vec3(3, 50, 0))))))
        .contains("turned by -11.25°", "Very likely", "with the same GlobalId");
  }

  /**
   * Boxes along the axes don't turn with what is in them: of twenty the eight that are no posts have their middles elsewhere after a turn.
   * The movement back is exact all the same: shift = −R⁻¹·M.
   */
  @Test
  void whatIsNotSymmetricDoesNotBlurTheMovement() {
    RigidTransform m = new RigidTransform(1, 31.4159, new Vec3(120.5, -40.25, 6));
    List<Mark> here = new ArrayList<>();
    List<Mark> there = new ArrayList<>();
    Random random = new Random(11);
    for (int i = 0; i < 20; i++) {
      Vec3 at = new Vec3(random.nextDouble() * 18, random.nextDouble() * 10, random.nextInt(3) * 3);
      Vec3 turned = m.transform().apply(at).plus(i < 8 ? new Vec3(random.nextDouble() / 30, random.nextDouble() / 30, 0) : Vec3.ZERO);
      here.add(new Mark("i" + i, "IfcSlab", false, new Box3(at.x() - 0.2, at.y() - 0.2, at.z(), at.x() + 0.2, at.y() + 0.2, at.z() + 2)));
      there.add(
          new Mark("i" + i, "IfcSlab", false, new Box3(turned.x() - 0.3, turned.y() - 0.3, turned.z(), turned.x() + 0.3, turned.y() + 0.3,
              turned.z() + 2)));
    }
    Finding f = between(model("a", here), model("b", there)).get(0);
    RigidTransform back = RigidTransform.parse(f.remedy().orElseThrow().movement());
    for (Vec3 p : List.of(Vec3.ZERO, new Vec3(18, 10, 8))) {
      assertThat(back.transform().apply(m.transform().apply(p)).distance(p)).as(f.message()).isLessThan(1e-6);
    }
  }

  /** Millimetres taken for metres, feet for metres, inches for millimetres. */
  @ParameterizedTest
  @CsvSource({"1000, lengths times 0.001", "0.001, lengths times 1000", "0.0254, lengths times 39.370079", "25.4, lengths times 0.03937"})
  void unitSlips(double factor, String words) {
    assertThat(only(model("a", house("i")), model("b", moved(house("other"), new RigidTransform(factor, 0, Vec3.ZERO)))))
        .contains(words).contains("another unit than it states");
  }

  /** Feet for metres change the size by three only: storeys of the same names tell. */
  @Test
  void aUnitSlipThatStoreysTell() {
    RigidTransform m = new RigidTransform(1 / 0.3048, 0, Vec3.ZERO);
    Footprint a = model("a", house("i"), Map.of("ground", 0.0, "first", 3.0), Map.of(), null);
    Footprint b = model("b", moved(house("other"), m), Map.of("ground", 0.0, "first", 3.0 / 0.3048), Map.of(), null);
    assertThat(only(a, b)).contains("lengths times 0.3048");
  }

  /** Nothing but pipes, and three holes in the roof that they fit. */
  @Test
  void pipesFindTheirHoles() {
    List<Mark> holes = new ArrayList<>(house("i"));
    List<Mark> pipes = new ArrayList<>();
    double[][] at = {{3, 2}, {9.5, 4.1}, {15, 9}};
    for (double[] p : at) {
      holes.add(new Mark("hole " + p[0], Mark.HOLE, false, new Box3(p[0] - 0.1, p[1] - 0.1, 8, p[0] + 0.1, p[1] + 0.1, 9)));
      pipes.add(new Mark("pipe " + p[0], "IfcPipeSegment", true, new Box3(p[0] - 0.06, p[1] - 0.06, 5, p[0] + 0.06, p[1] + 0.06, 9.6)));
    }
    assertThat(only(model("a", holes), model("b", moved(pipes, new RigidTransform(1, 90, new Vec3(-30, 4, 0))))))
        .contains("turned by -90°", "3 pipes or ducts then stand in holes", "x -4 m, y -30 m, z 0 m");
  }

  /** One model's site is at the survey point: the placements say so, and nothing else does. */
  @Test
  void placementsOfSites() {
    List<Mark> pipes = List.of(new Mark("p", "IfcPipeSegment", true, new Box3(5, 5, 0, 5.1, 5.1, 8)),
        new Mark("q", "IfcPipeSegment", true, new Box3(7, 5, 0, 7.2, 5.1, 8)));
    RigidTransform far = new RigidTransform(1, 0, new Vec3(450_000, 5_200_000, 90));
    Footprint a = model("a", house("i"), Map.of(), Map.of("sites", Transform.IDENTITY), null);
    Footprint b = model("b", moved(pipes, far), Map.of(), Map.of("sites", far.transform()), null);
    assertThat(only(a, b)).contains("Possibly", "x -450000 m, y -5200000 m, z -90 m", "placements of their sites");
  }

  @Test
  void strangersAreApart() {
    List<Mark> other = List.of(new Mark("p", "IfcBeam", false, new Box3(505, 5, 0, 505.1, 5.1, 8)));
    assertThat(between(model("a", house("i")), model("b", other))).singleElement().satisfies(f -> {
      assertThat(f.code()).isEqualTo("models/apart");
      assertThat(f.message()).contains("does not overlap", "may be different buildings");
    });
  }

  /** One stray element far away does not hide that a model is elsewhere, nor make a model that fits look displaced. */
  @Test
  void straysDontCount() {
    List<Mark> strayed = new ArrayList<>(house("other"));
    strayed.add(new Mark("stray", "IfcBuildingElementProxy", false, new Box3(9000, 9000, 0, 9001, 9001, 1)));
    assertThat(between(model("a", house("i")), model("b", strayed))).isEmpty();
    List<Mark> away = new ArrayList<>(moved(house("other"), new RigidTransform(1, 0, new Vec3(8995, 8995, 0))));
    away.add(new Mark("stray", "IfcBuildingElementProxy", false, new Box3(1, 1, 0, 2, 2, 1)));
    assertThat(only(model("a", house("i")), model("b", away))).contains("x -8995 m, y -8995 m");
  }

  /** The order of elements changes nothing; nor does it matter how many there are. */
  @Test
  void keepsTheSameElementsOfBothModels() {
    Footprint.Collector one = new Footprint.Collector();
    Footprint.Collector other = new Footprint.Collector();
    for (int i = 0; i < 3 * Footprint.MOST; i++) {
      one.add(new Mark("id" + i, "IfcWall", false, new Box3(i, 0, 0, i + 1, 1, 1)));
      int k = 3 * Footprint.MOST - 1 - i;
      other.add(new Mark("id" + k, "IfcWall", false, new Box3(k, 0, 0, k + 1, 1, 1)));
    }
    assertThat(one.marks()).hasSize(Footprint.MOST).containsExactlyInAnyOrderElementsOf(other.marks());
  }
}
