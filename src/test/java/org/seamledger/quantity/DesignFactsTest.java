package org.seamledger.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.seamledger.detail.DesignReview;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.FixedLines;
import org.seamledger.finding.Finding;
import org.seamledger.progress.Progress;
import org.seamledger.quantity.formula.HipGeometry;
import org.seamledger.quantity.physics.Metal;
import org.seamledger.quantity.physics.Rain;
import org.seamledger.shacl.Rules;

@Tag("slow")
class DesignFactsTest {

  private static final double IN = 0.0254;
  private static final double FT = 0.3048;

  private static Counted house(String name) {
    return Counted.of(Path.of("ifc-samples", name + ".ifc"), RoofSystem.DEFAULT);
  }

  private static DesignFacts facts(Counted c) {
    return new DesignFacts(c.junctions(), List.of(), c.quantities(), c.takeoff().drainage(), BelowRoof.NONE);
  }

  /** A fact of every junction of a kind that has it, rounded to a tenth of a millimetre. */
  private static Set<Double> all(Counted c, String kind, String fact) {
    DesignFacts facts = facts(c);
    Set<Double> values = new TreeSet<>();
    for (DetailedJunction j : c.junctions()) {
      if (j.junction().kind().equals(kind) && facts.junction(j).get(fact) instanceof Double d) {
        values.add(Math.round(d * 1e4) / 1e4);
      }
    }
    return values;
  }

  @Test
  void waterOfAValley() {
    // The wing of 8:12 and 12 ft breadth on a roof of 4:12 and 32 ft: over each valley of 6 by 12 ft in plan lie 6 × 16 − 6 × 12 / 2 = 60
    // ft² of the main face and 12 × 6 / 2 = 36 ft² of the wing's (plan geometry by hand).
    RoofSystem system = Counted.workedSystem("unequal-valley");
    Counted c = Counted.worked("unequal-valley", system);
    double flow = Rain.flow(1, 9.6 * IN / 3600, 96 * FT * FT);
    HipGeometry g = HipGeometry.square(4 / 12.0, 8 / 12.0);
    Rain.ValleyFlow expected = Rain.valley(flow, 0.012, g.lineDegrees(), 1 / Math.tan(Math.toRadians(g.backing1Degrees())),
        1 / Math.tan(Math.toRadians(g.backing2Degrees())));
    double cleats = 4 * IN * (Math.cos(Math.toRadians(g.backing1Degrees())) + Math.cos(Math.toRadians(g.backing2Degrees())));
    DesignFacts facts = facts(c);
    assertThat(c.junctions().stream().filter(j -> j.junction().kind().equals("valley")).toList()).hasSize(2).allSatisfy(j -> {
      assertThat((Double) facts.junction(j).get("flowWidthM")).isCloseTo(expected.widthM(), within(1e-4));
      assertThat((Double) facts.junction(j).get("cleatLineM")).isCloseTo(cleats, within(1e-5));
    });
  }

  @Test
  void thingsThroughTheRoofKeepTheirDistance() {
    // Rooflights of 1.2 m every 3.5 m along the eave.
    assertThat(all(house("orangery"), "curb-upslope", "toPenetrationM")).containsExactly(2.3);
    // Ducts of 0.6 and 0.5 m, 3 m apart: 2.45; a duct 0.4 m deep and a rooflight 1.5 m deep, 3 m apart up a slope of 0.5:12: 2.05 ·
    // √(1+t²).
    Counted bathhouse = house("bathhouse");
    assertThat(all(bathhouse, "curb-downslope", "toPenetrationM")).contains(2.45, Math.round(2.05 * Math.hypot(1, 0.5 / 12) * 1e4) / 1e4);
    assertThat(all(bathhouse, "curb-upslope", "toValleyM")).isEmpty();
  }

  @Test
  void eavesAtWallsAndDrops() {
    Counted orangery = house("orangery");
    DesignFacts facts = facts(orangery);
    // The side wall stands beside the lower part of the slope, down to the eave.
    assertThat(
        orangery.junctions().stream().filter(j -> j.junction().kind().equals("sidewall")).map(j -> facts.junction(j).get("eaveAtLowEnd")))
        .containsExactly(true);
    // The upper roof's eave drops on the lower roof of 18°; the two other eaves drop on no roof.
    assertThat(all(house("coach-house"), "eave", "dropSlopeDegrees")).containsExactly(18.0);
  }

  @Test
  void factsOfTheSystem() {
    Map<String, Object> f = facts(Counted.worked("ridge-40ft", RoofSystem.DEFAULT)).system();
    // 3/16 × 7/8 in of tape fills a flange of 1 in at 12.5 % of compression, by its volume.
    assertThat((Double) f.get("tapeSpreadM") / IN).isCloseTo(1, within(5e-5));
    assertThat((Double) f.get("closureProudM") / IN).isCloseTo(.1641, within(5e-5));
    assertThat((Double) f.get("slumpStressPa")).isCloseTo(81, within(0.5));
    assertThat(f).containsEntry("fastenerContact", "small-noble").containsEntry("flashingContact", "compatible")
        .containsEntry("fixedAt", "eave").containsEntry("acidCuring", false);
    // 70 °F and 50 %: dew point 50.5 °F by the Magnus formula.
    assertThat((Double) f.get("metalAboveDewPointK")).isCloseTo((70 - 50.5) / 1.8, within(0.05));
    assertThat((Double) f.get("freeEdgeM")).isCloseTo((80 + 4 * 12 * Math.sqrt(1.25)) * FT, within(0.01));
  }

  @Test
  void movementOfTheLongestPanel() {
    // Steel, 12·√1.25 ft, 200 °F: 1.600 in per 100 ft and 200 °F (derived table); half of it from the middle.
    Counted c = Counted.worked("ridge-40ft", RoofSystem.DEFAULT);
    double longest = 12 * Math.sqrt(1.25);
    assertThat(facts(c).face(c.takeoff().faces().get(0))).satisfies(f -> {
      assertThat((Double) f.get("panelLengthM") / FT).isCloseTo(longest, within(1e-3));
      assertThat((Double) f.get("movementM") / IN).isCloseTo(1.600 * longest / 100, within(1e-4));
    });
    Counted middle = Counted.worked("ridge-40ft", RoofSystem.parse("{\"panel\": {\"fixedAt\": \"middle\"}}", "s"));
    assertThat((Double) facts(middle).face(c.takeoff().faces().get(0)).get("movementM") / IN).isCloseTo(0.8 * longest / 100, within(1e-4));
  }

  @Test
  void iceBarrierIsMeasuredLevelFromTheEdge() {
    // Eaves of 40 ft at 6:12: 24 in inside the wall's inside, measured level, are that over the cosine along the slope; a wall 6 in thick
    // behind an overhang of 12 in adds 18 in (a magazine's worked example: 42 in level, 47 in along 6:12).
    RoofSystem cold = RoofSystem.parse("{\"site\": {\"iceBarrier\": true}}", "s");
    Counted c = Counted.worked("ridge-40ft", cold);
    double slope = Math.sqrt(1.25);
    Map<String, Object> f = facts(c).system();
    assertThat((Double) f.get("iceZoneM2") / FT / FT).isCloseTo(2 * 40 * 2 * slope, within(0.02));
    assertThat((Double) f.get("iceUnmeasuredM") / FT).isCloseTo(80, within(0.01));
    TreeMap<String, Double> walls = new TreeMap<>();
    c.junctions().stream().filter(j -> j.junction().kind().equals("eave")).forEach(j -> walls.put(j.junction().junction().id(), 18 * IN));
    BelowRoof below = new BelowRoof(new TreeMap<>(), new TreeMap<>(), walls, new TreeMap<>());
    Map<String, Object> walled = new DesignFacts(c.junctions(), List.of(), c.quantities(), c.takeoff().drainage(), below).system();
    assertThat((Double) walled.get("iceZoneM2") / FT / FT).isCloseTo(2 * 40 * 46.96 / 12, within(0.1));
    assertThat((Double) walled.get("iceUnmeasuredM")).isZero();
    assertThat(codes(c)).contains("ice/barrier");
    assertThat(codes(Counted.worked("ridge-40ft", RoofSystem.DEFAULT))).doesNotContain("ice/barrier");
  }

  @Test
  void copperIsFollowedDownTheWater() {
    // The upper roof drops on the lower one of 18°, not the other way.
    Counted c = house("coach-house");
    String lower = c.takeoff().drainage().drops().values().iterator().next().firstKey();
    TreeMap<String, Metal> copper = new TreeMap<>();
    c.takeoff().faces().stream().filter(f -> !f.id().equals(lower)).forEach(f -> copper.put(f.id(), Metal.COPPER));
    assertThat(c.takeoff().faces())
        .allSatisfy(f -> assertThat(upstream(c, copper).face(f).get("copperAbove")).isEqualTo(f.id().equals(lower)));
    TreeMap<String, Metal> below = new TreeMap<>(Map.of(lower, Metal.COPPER));
    assertThat(c.takeoff().faces()).allSatisfy(f -> assertThat(upstream(c, below).face(f).get("copperAbove")).isEqualTo(false));
    assertThat(upstream(c, below).face(c.quantities().layout().roofFace(lower)).get("faceMetal")).isEqualTo("copper");
  }

  private static DesignFacts upstream(Counted c, TreeMap<String, Metal> metals) {
    return new DesignFacts(c.junctions(), List.of(), c.quantities(), c.takeoff().drainage(),
        new BelowRoof(new TreeMap<>(), new TreeMap<>(), new TreeMap<>(), metals));
  }

  @Test
  void tapeBetweenFasteners() {
    // 16 in pieces, 6 in apart: 87.5 % (derived; the reach of 2 in is common practice).
    RoofSystem wide = RoofSystem.parse("{\"fasteners\": {\"spacing\": \"6 in\"}}", "s");
    Counted c = Counted.worked("ridge-40ft", wide);
    DetailedJunction ridge = c.junctions().stream().filter(j -> j.junction().kind().equals("ridge")).findFirst().orElseThrow();
    FastenerRow foot =
        c.ofKind("ridge").get(0).fasteners().stream().filter(r -> r.place().equals("closure foot")).findFirst().orElseThrow();
    assertThat(foot.coverage()).isCloseTo(.875, within(1e-4));
    assertThat((Double) facts(c).junction(ridge).get("tapeCoverageShare")).isLessThan(.876);
    assertThat(codes(c)).contains("tape/spacing");
    assertThat(codes(Counted.worked("ridge-40ft", RoofSystem.DEFAULT))).doesNotContain("tape/spacing");
  }

  private static Set<String> codes(Counted c) {
    DesignFacts facts = facts(c);
    DesignReview review = new DesignReview(Rules.packaged(), facts.system());
    Set<String> codes = new TreeSet<>();
    List<Finding> findings = new java.util.ArrayList<>(review.ofSystem());
    c.takeoff().faces().forEach(f -> findings.addAll(review.ofFace(f, facts.face(f))));
    c.junctions().forEach(j -> findings.addAll(review.ofJunction(j, facts.junction(j), Map.of())));
    findings.forEach(f -> codes.add(f.code()));
    return codes;
  }

  /** A system wrong in many ways: each finding of the system comes up; the default system has none of them. */
  @Test
  void aBadSystemIsReviewed() {
    Set<String> bad = codes(Counted.worked("ridge-40ft", RoofSystem.parse("""
        {"panel": {"metal": "zinc", "fixedAt": "both-ends", "movementGap": "1/16 in", "thickness": "0.4 mm", "coverage": "12 in"},
         "tape": {"width": "1 1/4 in"}, "closure": {"height": "1 in"}, "flashing": {"metal": "copper"}, "fasteners": {"metal": "aluminium"},
         "sealant": {"acidCuring": true}, "limits": {"lowestSlope": "7:12", "sealSeamsBelow": "1:12"},
         "site": {"installAir": "35 °F", "installMetal": "30 °F", "humidity": "90 %"}}""", "bad.json")));
    Set<String> expected = Set.of("seal/acid-on-metal", "seal/dew", "seal/too-cold", "metal/copper-above", "metal/flashing-on-panel",
        "movement/both-ends-fixed", "movement/gap-too-small", "tape/wider-than-lip", "closure/height", "slope/under-system-minimum",
        "metal/thin-sheet");
    assertThat(bad).containsAll(expected);
    assertThat(codes(Counted.worked("ridge-40ft", RoofSystem.DEFAULT))).doesNotContainAnyElementsOf(expected);
  }

  @Test
  void seamsOfALowSlopeAreSealedAlongTheirLength() {
    Counted c = house("bathhouse");
    ProjectQuantities.InSeam in = c.quantities().project().inSeam();
    double seams = c.quantities().layout().byFace().values().stream().mapToDouble(l -> l.seamLengthM()).sum();
    assertThat(in.faces()).hasSize(1);
    assertThat(in.netM()).isPositive().isCloseTo(seams, within(1e-9));
    assertThat(in.orderM()).isCloseTo(1.1 * seams, within(1e-9));
    // 10 by 16 m at 0.5:12: 39 seams of 16 m / 16 in, less what ducts and rooflights of 0.6, 0.5, 1 and 1 m interrupt.
    double whole = 39 * 10 * Math.hypot(1, 0.5 / 12);
    assertThat(seams).isLessThan(whole).isGreaterThan(whole - 12);
    assertThat(house("coach-house").quantities().project().inSeam().netM()).isZero();
  }

  /** The order is the same whatever the order of the junctions, and equals the sum of its parts. */
  @Test
  void sumsReconcile() {
    for (String name : List.of("gatehouse", "granary", "barn")) {
      Counted c = house(name);
      ProjectQuantities p = c.quantities().project();
      Map<String, Long> fasteners = new TreeMap<>();
      long pieces = 0;
      for (DetailedJunction j : c.junctions()) {
        JunctionQuantities q = c.quantities().byJunction().get(j.junction().junction().id());
        q.fasteners().forEach(f -> fasteners.merge(f.place(), (long) f.count(), Long::sum));
        pieces += q.closurePieces();
        double length = j.junction().junction().lengthM();
        // Closures between seams add up to the line on every face they lie on.
        Set<String> parts = new TreeSet<>();
        q.closures().forEach(cut -> parts.add(cut.part()));
        q.metal().stream().filter(m -> parts.contains(m.part()))
            .forEach(m -> assertThat(m.lengthM()).as(name).isCloseTo(length, within(0.002)));
        assertThat(q.steps()).as(name).hasSizeGreaterThanOrEqualTo(q.metal().size());
      }
      assertThat(p.fasteners().byPlace()).as(name).isEqualTo(fasteners);
      assertThat(p.closures().pieces()).as(name).isEqualTo(pieces);
      assertThat(p.bead().netMl()).as(name).isCloseTo(p.bead().concealed().netMl() + p.bead().exposed().netMl(), within(1e-6));
      assertThat(p.bead().cartridges()).as(name).isEqualTo((long) Math.ceil(p.bead().netMl() * 1.1 / (10.1 * 29.5735295625)));
      List<DetailedJunction> turned = new java.util.ArrayList<>(c.junctions());
      java.util.Collections.reverse(turned);
      ProjectQuantities again =
          Quantities.of(c.takeoff().faces(), turned, List.of(), c.quantities().layout(), RoofSystem.DEFAULT,
              new FixedLines(Rules.packaged()), Progress.NONE).project();
      assertThat(again.fasteners()).isEqualTo(p.fasteners());
      assertThat(again.tape().rolls()).isEqualTo(p.tape().rolls());
    }
  }
}
