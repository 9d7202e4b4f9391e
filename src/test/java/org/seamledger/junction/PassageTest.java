package org.seamledger.junction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.element.Building;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.element.Opening;
import org.seamledger.geometry.MeshBuilder;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Progress;
import org.seamledger.roof.RoofBuilder;
import org.seamledger.roof.SurfaceLimits;

/** Things through a level slab 6 m by 6 m whose top is at z = 0: whether it has a hole for them, and what counts as one thing. */
class PassageTest {

  private static final int CORNERS = 48;

  private final List<Element> things = new ArrayList<>();
  private final List<Opening> openings = new ArrayList<>();

  private static Solid prism(double x, double y, double radius, double low, double high, int corners) {
    List<Vec3> bottom = new ArrayList<>();
    List<Vec3> top = new ArrayList<>();
    for (int i = 0; i < corners; i++) {
      // A regular prism whose sides touch the circle for four corners: then radius is half the side.
      double r = corners == 4 ? radius * Math.sqrt(2) : radius;
      double a = 2 * Math.PI * (i + 0.5) / corners;
      bottom.add(new Vec3(x + r * Math.cos(a), y + r * Math.sin(a), low));
      top.add(new Vec3(x + r * Math.cos(a), y + r * Math.sin(a), high));
    }
    MeshBuilder mesh = new MeshBuilder();
    mesh.face(top, List.of());
    List<Vec3> under = new ArrayList<>(bottom);
    java.util.Collections.reverse(under);
    mesh.face(under, List.of());
    for (int i = 0; i < corners; i++) {
      int k = (i + 1) % corners;
      mesh.face(List.of(bottom.get(i), bottom.get(k), top.get(k), top.get(i)), List.of());
    }
    return mesh.build();
  }

  private void round(String id, Category category, String ifcClass, double x, double radius, double low, double high) {
    things
        .add(new Element(id, ifcClass, category, id, 0, List.of(prism(x, 0, radius, low, high, CORNERS)), List.of(), "", new TreeMap<>()));
  }

  private void hole(double x, double radius) {
    openings.add(new Opening("hole " + openings.size(), List.of(prism(x, 0, radius, -1, 1, CORNERS)), "", ""));
  }

  private List<Junction> pipes() {
    Element roof = new Element("roof", "IfcSlab", Category.ROOF, "", 0, List.of(prism(0, 0, 3, -0.2, 0, 4)), openings, "", new TreeMap<>());
    Building building = new Building(List.of(), List.of(roof), things, Vec3.ZERO, List.of());
    return JunctionFinder.find(RoofBuilder.build(building, Tolerance.DEFAULT, SurfaceLimits.DEFAULT, Progress.NONE), Progress.NONE).stream()
        .filter(j -> j.facts().word("against").equals("round")).toList();
  }

  /** A pipe 100 mm across. Hole as wide: whole; none: none; 30 mm beside, or 80 mm wide only: partly; elsewhere: none. */
  @ParameterizedTest
  @CsvSource({"0, 0.05, whole", "0, 0.09, whole", "0.03, 0.05, partly", "0, 0.04, partly", "1, 0.05, none"})
  void saysWhetherTheRoofHasAHole(double holeAt, double radius, String expected) {
    round("pipe", Category.SERVICE, "IfcPipeSegment", 0, 0.05, -1, 1);
    hole(holeAt, radius);
    assertThat(pipes()).filteredOn(j -> j.elements().contains("pipe")).singleElement().satisfies(j -> {
      assertThat(j.facts().word("roofHole")).isEqualTo(expected);
      assertThat(j.facts().flag("service")).isTrue();
    });
  }

  @Test
  void aChimneyIsAskedTooButIsNoService() {
    round("stack", Category.PENETRATION, "IfcChimney", 0, 0.3, -1, 1);
    assertThat(pipes()).singleElement().satisfies(j -> {
      assertThat(j.facts().word("roofHole")).isEqualTo("none");
      assertThat(j.facts().flag("service")).isFalse();
    });
  }

  /** Insulation 40 mm thick round a pipe 100 mm across: one line, 180 mm across, and it is the pipe's. */
  @Test
  void insulationCountsToItsOuterLineUnderThePipesName() {
    round("pipe", Category.SERVICE, "IfcPipeSegment", 0, 0.05, -1, 1);
    round("jacket", Category.PENETRATION, "IfcCovering", 0, 0.09, -0.5, 0.6);
    assertThat(pipes()).singleElement().satisfies(j -> {
      assertThat(j.elements()).containsExactly("roof", "pipe");
      assertThat(j.facts().number("diameterM")).isCloseTo(0.18, within(0.001));
      assertThat(j.facts().number("upstandM")).isCloseTo(1, within(0.011));
    });
  }

  /** A segment that ends 5 mm above the surface and goes on in the next one. */
  @Test
  void aPipeThatEndsAtTheSurfaceGoesOnInItsNextSegment() {
    round("lower", Category.SERVICE, "IfcPipeSegment", 0, 0.05, -1, 0.005);
    round("upper", Category.SERVICE, "IfcPipeSegment", 0, 0.05, 0.005, 1);
    assertThat(pipes()).singleElement().satisfies(j -> assertThat(j.facts().number("diameterM")).isCloseTo(0.1, within(0.001)));
  }

  /** A segment that just shows above the surface and has no next one is slack of the model. */
  @Test
  void aPipeThatEndsAtTheSurfaceForGoodIsNone() {
    round("lower", Category.SERVICE, "IfcPipeSegment", 0, 0.05, -1, 0.005);
    assertThat(pipes()).isEmpty();
  }

  /** Two pipes side by side stay two. */
  @Test
  void neighboursStayApart() {
    round("a", Category.SERVICE, "IfcPipeSegment", 0, 0.05, -1, 1);
    round("b", Category.SERVICE, "IfcPipeSegment", 0.3, 0.05, -1, 1);
    assertThat(pipes()).hasSize(2);
  }
}
