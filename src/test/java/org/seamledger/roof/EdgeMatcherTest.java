package org.seamledger.roof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamledger.roof.Steps.LEVEL;
import static org.seamledger.roof.Steps.LIMITS;
import static org.seamledger.roof.Steps.TOLERANCE;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.progress.Progress;
import org.seamledger.roof.Contact.Free;
import org.seamledger.roof.Contact.OtherFacet;
import org.seamledger.roof.Obstacle.OpenHole;
import org.seamledger.roof.Obstacle.Penetration;
import org.seamledger.roof.Obstacle.Wall;

/** What the outline of level facets 10 m by 10 m ends at; lengths by the coordinates. */
class EdgeMatcherTest {

  private static final Region TEN = Region.rectangle(0, 0, 10, 10);

  private static List<BoundaryEdge> edges(ExposedFacet... facets) {
    return EdgeMatcher.edges(List.of(facets), TOLERANCE, LIMITS, Progress.NONE);
  }

  private static Map<String, Double> lengths(List<BoundaryEdge> edges) {
    Map<String, Double> sums = new TreeMap<>();
    edges.forEach(e -> sums.merge(e.contact().getClass().getSimpleName(), e.lengthM(), Double::sum));
    return sums;
  }

  @Test
  void nothingBesideIsFreeAllRound() {
    assertThat(lengths(edges(Steps.facet(LEVEL, TEN, 0.2)))).containsExactly(Map.entry("Free", 40.0));
    assertThat(edges()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0, true", "0.03, true", "0.06, false"})
  void facetsMeetAcrossNoMoreThanTheGap(double gap, boolean meets) {
    List<BoundaryEdge> edges = edges(Steps.facet(LEVEL, TEN, 0.2), Steps.facet(LEVEL, Region.rectangle(10 + gap, 0, 15, 10), 0.2));
    List<OtherFacet> met = edges.stream().map(BoundaryEdge::contact).filter(OtherFacet.class::isInstance)
        .map(OtherFacet.class::cast).toList();
    assertThat(met).hasSize(meets ? 2 : 0).allSatisfy(o -> assertThat(o.gapM()).isCloseTo(gap, within(1e-6)));
    assertThat(met).extracting(OtherFacet::facet).isSubsetOf(0, 1);
    assertThat(edges.stream().mapToDouble(BoundaryEdge::lengthM).sum()).as("each outline whole")
        .isCloseTo(40 + 2 * (5 - gap + 10), within(1e-6));
  }

  /** A wall along 4 of the 10 m of a side. */
  @Test
  void aSideIsPartedWhereAWallEnds() {
    Wall wall = new Wall("wall", "IfcWall", Region.rectangle(3, -0.3, 7, 0), 2);
    List<BoundaryEdge> edges = edges(Steps.facet(LEVEL, TEN, 0.2, wall));
    assertThat(lengths(edges).get("Wall")).isCloseTo(4, within(1e-6));
    assertThat(lengths(edges).get("Free")).isCloseTo(36, within(1e-6));
  }

  @Test
  void facesWinOverWalls() {
    Wall wall = new Wall("wall", "IfcWall", Region.rectangle(10, 0, 10.3, 10), 2);
    assertThat(lengths(edges(Steps.facet(LEVEL, TEN, 0.2, wall), Steps.facet(LEVEL, Region.rectangle(10, 0, 15, 10), 0.2))))
        .containsOnlyKeys("Free", "OtherFacet");
  }

  /** A stretch of 20 mm between a wall's end and the corner belongs to the wall's line beside it, or the free one. */
  @Test
  void slackAtACornerIsAbsorbed() {
    Wall wall = new Wall("wall", "IfcWall", Region.rectangle(0, -0.3, 9.98, 0), 2);
    Wall side = new Wall("side", "IfcWall", Region.rectangle(10, 0, 10.3, 10), 2);
    assertThat(lengths(edges(Steps.facet(LEVEL, TEN, 0.2, wall, side))).get("Wall")).isCloseTo(20, within(1e-6));
    Wall shorter = new Wall("wall", "IfcWall", Region.rectangle(0, -0.3, 9.9, 0), 2);
    assertThat(lengths(edges(Steps.facet(LEVEL, TEN, 0.2, shorter, side))).get("Wall")).isCloseTo(19.9, within(1e-6));
  }

  // ---- holes

  private static Region circle() {
    List<Vec2> ring = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      ring.add(new Vec2(5 + Math.cos(Math.PI * i / 12), 5 + Math.sin(Math.PI * i / 12)));
    }
    return Region.polygon(ring);
  }

  @Test
  void aHoleThatEndsAtNothingIsAnOpening() {
    Region hole = Region.rectangle(4, 4, 5, 6);
    assertThat(edges(Steps.facet(LEVEL, TEN.minus(hole), 0.2))).filteredOn(e -> !(e.contact() instanceof Free)).hasSize(4)
        .allSatisfy(e -> assertThat(e.contact()).isInstanceOfSatisfying(OpenHole.class, h -> {
          assertThat(h.footprint().area()).isCloseTo(2, within(1e-6));
          assertThat(h.round()).isFalse();
        }));
    assertThat(edges(Steps.facet(LEVEL, TEN.minus(circle()), 0.2)))
        .filteredOn(e -> e.contact() instanceof OpenHole h && h.round()).hasSize(24);
  }

  /** The thing stands in the middle of the hole, 200 mm from its sides. */
  @Test
  void aHoleRoundAThingIsTheThings() {
    Penetration stack = new Penetration("stack", "IfcChimney", Region.rectangle(4.2, 4.2, 5.8, 5.8), 1, false,
        new Passage(false, Passage.Hole.WHOLE));
    List<BoundaryEdge> edges = edges(Steps.facet(LEVEL, TEN.minus(Region.rectangle(4, 4, 6, 6)), 0.2, stack));
    assertThat(lengths(edges)).containsOnlyKeys("Free", "Penetration");
    assertThat(lengths(edges).get("Penetration")).isCloseTo(8, within(1e-6));
  }

  // ---- contacts

  @Test
  void everyKindHasItsOwnPrecedence() {
    Passage passage = new Passage(false, Passage.Hole.NONE);
    List<Contact> order = List.of(new OtherFacet(1, 0), new Penetration("a", "", TEN, 1, false, passage), new Wall("a", "", TEN, 1),
        new OpenHole("a", "", TEN, false), new Obstacle.RoofSide("a", "", TEN, 1), new Free());
    assertThat(order).extracting(Contact::precedence).containsExactly(0, 1, 2, 3, 4, 5);
    for (Contact a : order) {
      assertThat(order.stream().filter(a::sameAs)).containsExactly(a);
    }
    assertThat(order.get(2).sameAs(new Wall("b", "", TEN, 1))).isFalse();
    assertThat(order.get(2).sameAs(new Wall("a", "", Region.EMPTY, 2))).isTrue();
    assertThat(order.get(0).sameAs(new OtherFacet(2, 0))).isFalse();
  }
}
