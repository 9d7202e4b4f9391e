package org.seamledger.quantity.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;

class LayoutTest {

  private static final double IN = 0.0254;
  private static final double FT = 0.3048;

  /** A face that rises towards +Y with the given slope; u is X, v = 0 at the X axis. */
  private static Plane rising(double tangent) {
    return Plane.through(Vec3.ZERO, new Vec3(0, -tangent, 1));
  }

  private static RoofFace face(double tangent, Region area) {
    return new RoofFace("F1", new Facet(rising(tangent), area), List.of("roof"));
  }

  private static Region polygon(double scale, double... uv) {
    List<Vec2> points = new ArrayList<>();
    for (int i = 0; i < uv.length; i += 2) {
      points.add(new Vec2(uv[i] * scale, uv[i + 1] * scale));
    }
    return Region.polygon(points);
  }

  private static FaceLayout layout(RoofFace face, double coverageM, Start start) {
    return FaceLayout.of(face, coverageM, start, 0, 3 * IN, Division.NONE);
  }

  @Test
  void aGableFaceOf40Feet() {
    double slope = 12 * Math.sqrt(1.25);
    FaceLayout l = layout(face(0.5, polygon(FT, 0, 0, 40, 0, 40, slope, 0, slope)), 16 * IN, Start.LEFT);
    // 30 pans of 16 in in 40 ft have 29 seams between them; the ends are rakes.
    assertThat(l.seams()).hasSize(29);
    assertThat(l.seamLengthM()).isCloseTo(29 * slope * FT, within(1e-6));
    assertThat(l.panels()).hasSize(30).allSatisfy(p -> {
      assertThat(p.widthM()).isCloseTo(16 * IN, within(1e-6));
      assertThat(p.lengthM()).isCloseTo(slope * FT, within(1e-6));
      assertThat(p.shaped() || p.sliver()).isFalse();
      assertThat(p.lowBevelDegrees()).isZero();
    });
    List<LinePiece> ridge = LineOnFace.pieces(List.of(at(l, 40 * FT, slope * FT), at(l, 0, slope * FT)), l);
    assertThat(ridge).hasSize(30).allSatisfy(p -> assertThat(p.psiDegrees()).isCloseTo(90, within(1e-4)));
  }

  private static Vec3 at(FaceLayout l, double u, double v) {
    return l.grids().get(0).facet().plane().at(u, v);
  }

  @Test
  void theHippedSideOfTheRoofWithSteeperEnds() {
    // 40 × 24 ft, sides 6/12, ends 9/12: end run 8 ft, ridge 24 ft; side closures 31.241 in on 6 pans, both sides 187.446 in a hip.
    double slope = 12 * Math.sqrt(1.25);
    FaceLayout l = layout(face(0.5, polygon(FT, 0, 0, 40, 0, 32, slope, 8, slope)), 16 * IN, Start.LEFT);
    List<LinePiece> hip = LineOnFace.pieces(List.of(at(l, 0, 0), at(l, 8 * FT, slope * FT)), l);
    assertThat(hip).hasSize(6).allSatisfy(p -> {
      assertThat(p.lengthM() / IN).isCloseTo(31.241, within(5e-4));
      assertThat(p.bevelDegrees()).isCloseTo(90 - Math.toDegrees(Math.atan2(8, slope)), within(1e-4));
    });
    assertThat(hip.stream().mapToDouble(LinePiece::lengthM).sum() / IN).isCloseTo(187.446, within(5e-4));
    // Each pan up the hip is longer by w · slope length / end run.
    assertThat((l.panels().get(1).lengthM() - l.panels().get(0).lengthM()) / IN).isCloseTo(16 * slope / 8, within(1e-3));
    assertThat(l.panels().get(0).highBevelDegrees()).isCloseTo(Math.toDegrees(Math.atan2(slope, 8)), within(1e-3));
    assertThat(l.panels().get(29).highBevelDegrees()).isCloseTo(-Math.toDegrees(Math.atan2(slope, 8)), within(1e-3));
    assertThat(l.panels().stream().mapToDouble(Panel::areaM2).sum()).isCloseTo(32 * slope * FT * FT, within(1e-5));
    // Seams k = 1…29: rising to the ridge at 96 in, level, falling: 2 · Σ (k/6) for k < 6, and 19 whole ones.
    assertThat(l.seamLengthM()).isCloseTo((2 * 15 / 6.0 + 19) * slope * FT, within(1e-4));
  }

  @Test
  void startsOfTheSeams() {
    RoofFace f = face(0.5, polygon(FT, 0, 0, 20, 0, 15, 10, 5, 10));
    assertThat(layout(f, 18 * IN, Start.LEFT).seams().get(0).position() / IN).isCloseTo(18, within(1e-6));
    assertThat(layout(f, 18 * IN, Start.RIGHT).seams().get(0).position() / IN).isCloseTo(240 - 13 * 18, within(1e-6));
    assertThat(layout(f, 18 * IN, Start.RIDGE).seams().get(0).position() / IN).isCloseTo(60 - 3 * 18, within(1e-6));
    // 240 in: a seam in the middle leaves 120 − 6 · 18 = 12 in, a pan 111 − 6 · 18 = 3 in.
    assertThat(layout(f, 18 * IN, Start.CENTRED).seams().get(0).position() / IN).isCloseTo(12, within(1e-6));
    assertThat(FaceLayout.of(f, 18 * IN, Start.LEFT, 9 * IN, 0, Division.NONE).seams().get(0).position() / IN).isCloseTo(9, within(1e-6));
    // 234 in = 13 pans: even ends with a pan in the middle, none narrower.
    RoofFace odd = face(0.5, polygon(IN, 0, 0, 234, 0, 234, 100, 0, 100));
    assertThat(layout(odd, 18 * IN, Start.CENTRED).panels()).hasSize(13)
        .allSatisfy(p -> assertThat(p.widthM() / IN).isCloseTo(18, within(1e-5)));
  }

  @Test
  void aHoleInterruptsSeamsAndSplitsPanels() {
    Region hole = polygon(1, 1.0, 2.0, 2.2, 2.0, 2.2, 3.0, 1.0, 3.0);
    FaceLayout l = layout(face(0.5, polygon(1, 0, 0, 4, 0, 4, 6, 0, 6).minus(hole)), 0.4, Start.LEFT);
    // Seams at 1.2, 1.6, 2.0 meet the hole.
    assertThat(l.seams()).hasSize(9);
    assertThat(l.seams().stream().filter(s -> s.stretches().size() == 2).map(s -> Math.round(s.position() * 10)))
        .containsExactly(12L, 16L, 20L);
    assertThat(l.seamLengthM()).isCloseTo(9 * 6 - 3, within(1e-6));
    // Pans 1.2–1.6 and 1.6–2.0 are cut in two; those at the hole's sides are notched.
    assertThat(l.panels()).hasSize(12);
    assertThat(l.panels().stream().filter(Panel::shaped).map(Panel::pan)).containsExactly(3, 6);
    assertThat(l.panels().stream().mapToDouble(Panel::areaM2).sum()).isCloseTo(24 - 1.2, within(1e-6));
    List<LinePiece> side = LineOnFace.pieces(List.of(at(l, 1, 2), at(l, 1, 3)), l);
    assertThat(side).containsExactly(new LinePiece(0, side.get(0).lengthM(), 0, at(l, 1, 2.5)));
    assertThat(LineOnFace.pieces(List.of(at(l, 2.2, 3), at(l, 1, 3)), l).stream().map(p -> Math.round(p.widthM() * 1000)))
        .containsExactly(200L, 400L, 400L, 200L);
  }

  @Test
  void aSeamAlongAnEdgeCountsOnlyWhereTheFaceLiesOnBothSides() {
    // A notch from 0.4 to 0.8 at the eave, its sides on seams.
    FaceLayout l = layout(face(0.5, polygon(1, 0, 0, 0.4, 0, 0.4, 1, 0.8, 1, 0.8, 0, 2, 0, 2, 3, 0, 3)), 0.4, Start.LEFT);
    assertThat(l.seams()).hasSize(4);
    assertThat(l.seams().get(0).lengthM()).isCloseTo(2, within(1e-6));
    assertThat(l.seams().get(1).lengthM()).isCloseTo(2, within(1e-6));
    assertThat(l.seams().get(2).lengthM()).isCloseTo(3, within(1e-6));
  }

  @Test
  void slivers() {
    FaceLayout l = layout(face(0.5, polygon(IN, 0, 0, 242, 0, 242, 100, 0, 100)), 16 * IN, Start.LEFT);
    assertThat(l.panels()).hasSize(16);
    assertThat(l.panels().stream().filter(Panel::sliver).map(Panel::pan)).containsExactly(16);
  }

  @Test
  void aCurvedFaceHasSeamsThatRunOn() {
    // Three facets of a barrel, each 1 m up its slope, 4 m wide.
    Plane a = Plane.through(Vec3.ZERO, new Vec3(0, -0.6, 1));
    Vec3 p1 = a.at(0, 1);
    Plane b = Plane.through(p1, new Vec3(0, -0.4, 1));
    Vec3 p2 = p1.plus(b.v());
    Plane c = Plane.through(p2, new Vec3(0, -0.2, 1));
    RoofFace face = new RoofFace("F1", List.of(strip(a, Vec3.ZERO), strip(b, p1), strip(c, p2)), List.of("roof"), 16, true);
    FaceLayout l = layout(face, 0.5, Start.LEFT);
    assertThat(l.seams()).hasSize(7).allSatisfy(s -> assertThat(s.lengthM()).isCloseTo(3, within(1e-5)));
    assertThat(l.panels()).hasSize(8).allSatisfy(p -> assertThat(p.lengthM()).isCloseTo(3, within(1e-5)));
    Vec3 top = p2.plus(c.v());
    assertThat(LineOnFace.pieces(List.of(top, top.plus(Vec3.X.times(4))), l)).hasSize(8);
    List<LinePiece> rake = LineOnFace.pieces(List.of(Vec3.ZERO, p1, p2, top), l);
    assertThat(rake).hasSize(1);
    assertThat(rake.get(0).lengthM()).isCloseTo(3, within(1e-9));
  }

  private static Facet strip(Plane plane, Vec3 foot) {
    double v = plane.v(foot);
    return new Facet(plane, Region.rectangle(0, v, 4, v + 1));
  }

  @Test
  void roundThings() {
    FaceLayout l = layout(face(0.5, polygon(1, 0, 0, 4, 0, 4, 6, 0, 6)), 0.4, Start.LEFT);
    assertThat(RoundOnFace.of(ring(l, 1.0, 0.05), l, 0.035)).satisfies(r -> {
      assertThat(r.onSeam()).isFalse();
      assertThat(r.clearanceM()).isCloseTo(0.15, within(1e-6));
    });
    assertThat(RoundOnFace.of(ring(l, 1.12, 0.05), l, 0.035)).satisfies(r -> {
      assertThat(r.seamsCut()).isZero();
      assertThat(r.seamsUnderFlange()).isEqualTo(1);
    });
    assertThat(RoundOnFace.of(ring(l, 1.2, 0.05), l, 0.035)).satisfies(r -> {
      assertThat(r.seamsCut()).isEqualTo(1);
      assertThat(r.clearanceM()).isCloseTo(-0.05, within(1e-6));
    });
  }

  private static List<Vec3> ring(FaceLayout l, double u, double radius) {
    List<Vec3> ring = new ArrayList<>();
    for (int i = 0; i <= 24; i++) {
      double a = 2 * Math.PI * (i % 24) / 24;
      ring.add(at(l, u + radius * Math.cos(a), 3 + radius * Math.sin(a)));
    }
    return ring;
  }

  /** Panels tile the face, seams are as long as a fine sampling says, and pieces along every edge add up to it. */
  @Test
  void randomFacesAgainstSlowChecks() {
    long seed = 99;
    Random random = new Random(seed);
    for (int n = 0; n < 12; n++) {
      List<Vec2> star = new ArrayList<>();
      int corners = 3 + random.nextInt(7);
      for (int i = 0; i < corners; i++) {
        double a = 2 * Math.PI * (i + random.nextDouble() * 0.8) / corners;
        double r = 1 + 4 * random.nextDouble();
        star.add(new Vec2(10 + r * Math.cos(a), 10 + r * Math.sin(a)));
      }
      Region area = Region.polygon(star).minus(Region.rectangle(9.7, 9.7, 10.3, 10.2));
      RoofFace face = face(0.2 + random.nextDouble(), area);
      double coverage = 0.3 + random.nextDouble() * 0.4;
      FaceLayout l = layout(face, coverage, Start.values()[random.nextInt(4)]);
      String name = "seed " + seed + ", case " + n;
      assertThat(l.panels().stream().mapToDouble(Panel::areaM2).sum()).as(name).isCloseTo(area.area(), within(0.02));
      for (Seam s : l.seams()) {
        int inside = 0;
        for (int k = 0; k < 500; k++) {
          inside += area.contains(new Vec2(s.position(), 5 + 10 * (k + 0.5) / 500)) ? 1 : 0;
        }
        assertThat(s.lengthM()).as(name + ", seam " + s.number()).isCloseTo(inside * 10.0 / 500, within(0.05));
      }
      for (Region.Ring ring : area.rings()) {
        List<Vec3> path = new ArrayList<>(ring.points().stream().map(p -> at(l, p.u(), p.v())).toList());
        path.add(path.get(0));
        double length = 0;
        for (int i = 1; i < path.size(); i++) {
          length += path.get(i - 1).distance(path.get(i));
        }
        assertThat(LineOnFace.pieces(path, l).stream().mapToDouble(LinePiece::lengthM).sum()).as(name).isCloseTo(length, within(1e-9));
      }
    }
  }

  @Test
  void aHallWithAThousandRooflights() {
    List<List<Vec2>> rings = new ArrayList<>();
    rings.add(List.of(new Vec2(0, 0), new Vec2(500, 0), new Vec2(500, 60), new Vec2(0, 60)));
    for (int i = 0; i < 100; i++) {
      for (int k = 0; k < 10; k++) {
        double u = 2.5 + 5 * i;
        double v = 3 + 6 * k;
        rings.add(List.of(new Vec2(u, v), new Vec2(u + 1, v), new Vec2(u + 1, v + 1.5), new Vec2(u, v + 1.5)));
      }
    }
    FaceLayout l = layout(face(0.05, Region.evenOdd(rings)), 0.4, Start.LEFT);
    assertThat(l.panels().stream().mapToDouble(Panel::areaM2).sum()).isCloseTo(500 * 60 - 1500, within(1e-3));
    assertThat(l.seams()).hasSize(1249);
  }
}
