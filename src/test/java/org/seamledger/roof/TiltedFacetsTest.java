package org.seamledger.roof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.geometry.GreatCircle;
import org.seamledger.geometry.MeshBuilder;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.JunctionFinder;
import org.seamledger.junction.Scene;
import org.seamledger.progress.Progress;

/**
 * Vaults of wide facets in short rows: where a corner is moved along the curve, the triangles at it tilt along the vault's axis by several
 * degrees, as much as (1.6 w)² κ / 8 over the length of a row, though all corners lie on the cylinder.
 */
class TiltedFacetsTest {

  private static final int ROWS = 6;

  /** Parts of a step, by chance once, by which the inner corners of a row are moved. */
  private static final double[] MOVED = {0.29, -0.24, -0.3, 0.11, 0.3, -0.07, -0.28, 0.22, -0.15, 0.3, -0.3, 0.02, 0.26};

  /** A cylinder's part cut into triangles, its axis along X. */
  private record Vault(double radiusM, double fromDegrees, double stepDegrees, int steps, double rowM) {

    Vec3 corner(int row, int k) {
      boolean inner = row > 0 && row < ROWS && k > 0 && k < steps;
      double a = Math.toRadians(fromDegrees + stepDegrees * (k + (inner ? MOVED[(2 * row + 4 * k) % MOVED.length] : 0)));
      return new Vec3(rowM * row, radiusM * Math.sin(a), radiusM * Math.cos(a));
    }

    List<List<Vec3>> triangles() {
      List<List<Vec3>> all = new ArrayList<>();
      for (int row = 0; row < ROWS; row++) {
        for (int k = 0; k < steps; k++) {
          Vec3 a = corner(row, k);
          Vec3 c = corner(row + 1, k + 1);
          Vec3 b = corner(row + 1, k);
          Vec3 d = corner(row, k + 1);
          boolean falling = (row * k) % 3 == 1;
          all.add(falling ? List.of(a, b, c) : List.of(a, b, d));
          all.add(falling ? List.of(a, c, d) : List.of(b, c, d));
        }
      }
      return all;
    }

    double chordsM() {
      return steps * 2 * radiusM * Math.sin(Math.toRadians(stepDegrees) / 2);
    }
  }

  private static void checkOneFace(Vault vault) {
    MeshBuilder mesh = new MeshBuilder();
    vault.triangles().forEach(t -> mesh.face(t, List.of()));
    Roof roof = new Scene().roof("vault", List.of(mesh.build())).build();
    double area = vault.triangles().stream().mapToDouble(t -> t.get(1).minus(t.get(0)).cross(t.get(2).minus(t.get(0))).length() / 2).sum();
    assertThat(roof.faces()).singleElement().satisfies(f -> {
      assertThat(f.isCurved()).isTrue();
      assertThat(f.areaM2()).isCloseTo(area, within(1e-3));
    });
    double rows = ROWS * vault.rowM();
    assertThat(JunctionFinder.find(roof, Progress.NONE).stream().map(j -> j.lengthM()).sorted().toList())
        .as("two eaves as long as the rows, two rakes of n · 2r · sin(φ / 2n)")
        .satisfiesExactly(a -> assertThat(a).isCloseTo(rows, within(1e-3)), b -> assertThat(b).isCloseTo(rows, within(1e-3)),
            c -> assertThat(c).isCloseTo(vault.chordsM(), within(2e-3)), d -> assertThat(d).isCloseTo(vault.chordsM(), within(2e-3)));
  }

  /** By up to six degrees, and the two facets that turn most, both of them tilted, don't show the axis. */
  @Test
  void aFewTiltedFacetsDoNotTurnTheAxis() {
    checkOneFace(new Vault(24.33, -20.4, 5.37, 14, 0.84));
  }

  /** By up to a seventh of all that the vault turns. */
  @Test
  void aFlatVaultIsOneFaceThoughItsFacetsTilt() {
    checkOneFace(new Vault(20, -12, 4, 8, 0.4));
  }

  /**
   * Three fields of 8 m by 32 m, each with four slopes to a drain in its middle: twelve flat faces, as a sheet and as a body. Area: of each
   * field ½ · 8 · √(16² + d²) twice and ½ · 32 · √(4² + d²) twice.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.3})
  void fallsToDrainsAreFlatFaces(double thick) {
    MeshBuilder mesh = new MeshBuilder();
    double[] deep = {0.10, 0.12, 0.14};
    double area = 0;
    for (int i = 0; i < deep.length; i++) {
      List<Vec3> p = Scene.points(0, 8 * i, 5, 32, 8 * i, 5, 32, 8 * i + 8, 5, 0, 8 * i + 8, 5);
      for (int k = 0; k < 4; k++) {
        mesh.face(List.of(p.get(k), p.get((k + 1) % 4), new Vec3(16, 8 * i + 4, 5 - deep[i])), List.of());
        if (thick > 0) {
          mesh.face(List.of(p.get((k + 1) % 4), p.get(k), new Vec3(16, 8 * i + 4, 5 - deep[i] - thick)), List.of());
        }
      }
      area += 8 * Math.hypot(16, deep[i]) + 32 * Math.hypot(4, deep[i]);
    }
    Roof roof = new Scene().roof("falls", List.of(mesh.build())).build();
    assertThat(roof.faces()).hasSize(12).noneMatch(RoofFace::isCurved);
    assertThat(roof.faces().stream().mapToDouble(RoofFace::areaM2).sum()).isCloseTo(area, within(1e-3));
  }

  /** Three unit vectors near the great circle across X, one of them off it: the axis of least squares is off by part of that only. */
  @Test
  void theAxisFitsAllDirections() {
    double off = Math.toRadians(6);
    List<Vec3> directions = List.of(new Vec3(0, Math.sin(-0.5), Math.cos(-0.5)), new Vec3(Math.sin(off), 0, Math.cos(off)),
        new Vec3(0, Math.sin(0.5), Math.cos(0.5)));
    Vec3 axis = GreatCircle.axis(directions);
    double least = directions.stream().mapToDouble(n -> n.dot(axis) * n.dot(axis)).sum();
    for (Vec3 turn : List.of(Vec3.Y, Vec3.Z, Vec3.Y.negated(), Vec3.Z.negated())) {
      Vec3 other = axis.plus(turn.times(1e-3)).unit();
      assertThat(directions.stream().mapToDouble(n -> n.dot(other) * n.dot(other)).sum()).isGreaterThan(least);
    }
    assertThat(GreatCircle.axis(List.of(Vec3.Z, Vec3.Y)).cross(Vec3.X).length()).isCloseTo(0, within(1e-12));
  }
}
