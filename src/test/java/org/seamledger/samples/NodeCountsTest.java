package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.seamledger.samples.Pitch.per12;
import static org.seamledger.samples.Pitch.pitch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.SharedModels;
import org.seamledger.junction.LineEnd;
import org.seamledger.node.KindedNode;
import org.seamledger.samples.House.Through;
import org.seamledger.takeoff.Takeoff;

/**
 * Nodes of roofs whose corners can be counted on a sketch: a gable has two ridge ends and four corners of rake and eave, a hip roof two
 * heads and four feet. Sources: the count itself, by hand, beside each roof.
 */
@Tag("slow")
class NodeCountsTest {

  /** A roof and how many nodes of each kind it has. */
  record Case(String name, House house, Map<String, Integer> counts) {
    @Override
    public String toString() {
      return name;
    }
  }

  static List<Case> cases() {
    List<Case> cases = new ArrayList<>();
    cases.add(new Case("gable", gable(), Map.of("ridge-end", 2, "rake-eave", 4)));
    cases.add(new Case("shed", Roofs.monoSlope(5, 9, per12(3)), Map.of("rake-eave", 2, "rake-high-eave", 2)));
    cases.add(new Case("hip", Roofs.hip(7, 11, per12(6)), Map.of("hip-head", 2, "hip-foot", 4)));
    cases.add(new Case("hip with steeper ends", Roofs.hip(7, 12, per12(6), per12(9)), Map.of("hip-head", 2, "hip-foot", 4)));
    cases.add(new Case("four hips to a point", Roofs.hip(6, 6, pitch(35)), Map.of("peak", 1, "hip-foot", 4)));
    cases.add(new Case("octagon", Roofs.octagon(3.2, per12(6)), Map.of("peak", 1, "hip-foot", 8)));
    // Each small hip stands on an eave of its own between two rakes.
    cases.add(new Case("half-hip", Roofs.halfHip(8, 13, pitch(40), 1.5), Map.of("hip-head", 2, "hip-foot", 4, "rake-eave", 4)));
    cases.add(new Case("gambrel", Roofs.gambrel(9, 14, pitch(60), 1.6, pitch(25)),
        Map.of("ridge-end", 2, "transition-end", 4, "rake-eave", 4)));
    cases.add(new Case("mansard", Roofs.mansard(10, 15, pitch(68), 1.1, pitch(18)),
        Map.of("hip-head", 2, "transition-corner", 4, "hip-foot", 4)));
    cases.add(new Case("butterfly", Roofs.butterfly(10, 14, per12(1)), Map.of("level-valley-end", 2, "rake-high-eave", 4)));
    // Two gable ends; where the wings meet a hip outside and a valley inside.
    cases.add(new Case("L plan", JoinedRoofs.ell(14, 11, 6, pitch(35)),
        Map.of("ridge-end", 2, "rake-eave", 4, "ridge-corner", 1, "hip-foot", 1, "valley-foot", 1)));
    // Three gable ends; the wing's two valleys meet at the end of its ridge, on the main slope.
    for (JoinedRoofs.Meeting meeting : JoinedRoofs.Meeting.values()) {
      cases.add(new Case("cross gable, " + meeting, JoinedRoofs.tee(8, 15, pitch(40), 6, 5, 3, pitch(40), meeting),
          Map.of("ridge-end", 3, "rake-eave", 6, "valley-head", 1, "valley-foot", 2)));
    }
    cases.add(new Case("lean-to", WalledRoofs.leanTo(3.5, 9, pitch(18), 1.2), Map.of("headwall-end", 2, "rake-eave", 2)));
    // Feet of both gables' walls at both eaves; each wall's slopes meet at the ridge's end.
    cases.add(new Case("parapet gables", WalledRoofs.parapetGables(8, 12, pitch(35), 0.4), Map.of("wall-foot", 4, "ridge-end-wall", 2)));
    for (Through through : Through.values()) {
      cases.add(new Case("narrow chimney, " + through, gable().chimney("stack", "south", 4, 2.2, 0.6, 0.6, 1.3, through),
          Map.of("ridge-end", 2, "rake-eave", 4, "curb-corner-upslope", 2, "curb-corner-downslope", 2)));
      // Wider than 30 in: it has a cricket (International Residential Code R903.2.2).
      cases.add(new Case("wide chimney, " + through, gable().chimney("stack", "south", 4, 2.2, 0.9, 0.6, 1.3, through),
          Map.of("ridge-end", 2, "rake-eave", 4, "cricket-end", 2, "curb-corner-downslope", 2)));
    }
    return cases;
  }

  private static House gable() {
    return Roofs.gable(8, 12, pitch(30));
  }

  /** The same counts however the roof is written: turned, mirrored, in another unit and schema, in another order, far from the origin. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void nodesAreThoseOnTheSketch(Case c) {
    Form far = Form.PLAIN.at(Form.Placing.values()[1], 450_000.25, 5_200_000.75, 312.5);
    for (Form form : List.of(Form.PLAIN, Form.PLAIN.turned(33).shuffled(2), Form.PLAIN.mirroredLeftRight().in(Form.Unit.INCH),
        Form.PLAIN.as(Form.Schema.IFC2X3).by(Form.Shape.BREP).turned(201), far.as(Form.Schema.IFC4X3).by(Form.Shape.CLIPPED).shuffled(1))) {
      Takeoff t = Pipeline.analyse(c.house(), form);
      SortedMap<String, Integer> found = new TreeMap<>();
      t.nodes().forEach(n -> found.merge(n.kind().id(), 1, Integer::sum));
      assertThat(found).as("%s %s", c.name(), form).isEqualTo(new TreeMap<>(c.counts()));
      everyEndHasOneNode(t, c.name());
    }
  }

  /** Every closed form of the program, with a tolerance of its own: the law alone. */
  @ParameterizedTest(name = "{0}")
  @MethodSource("org.seamledger.samples.ClosedForms#all")
  void everyEndHasOneNode(ClosedForms.Case c) {
    everyEndHasOneNode(Pipeline.analyse(c.house().get(), Form.PLAIN), c.name());
  }

  @Test
  void everyEndHasOneNodeInRealModels() throws IOException {
    for (Path file : SharedModels.all()) {
      if (!file.getFileName().toString().startsWith("d14")) {
        everyEndHasOneNode(Pipeline.analyse(file), file.toString());
      }
    }
  }

  @Test
  void everyEndHasOneNodeInTheSamples() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("ifc-samples"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".ifc")).sorted().toList()) {
        everyEndHasOneNode(Pipeline.analyse(file), file.toString());
      }
    }
  }

  static void everyEndHasOneNode(Takeoff t, String name) {
    List<KindedNode> nodes = t.nodes();
    assertThat(nodes).as(name).extracting(KindedNode::id).doesNotHaveDuplicates().isSorted();
    Map<LineEnd, Long> ends =
        nodes.stream().flatMap(n -> n.node().ends().stream()).collect(Collectors.groupingBy(e -> e, Collectors.counting()));
    t.junctions().stream().map(j -> j.junction()).forEach(j -> {
      boolean open = j.path().get(0).distance(j.path().get(j.path().size() - 1)) > 1e-6;
      for (boolean first : new boolean[] {true, false}) {
        assertThat(ends.getOrDefault(new LineEnd(j, first), 0L)).as("%s %s", name, j.id()).isEqualTo(open ? 1L : 0L);
      }
    });
    nodes.forEach(n -> n.node().ends().forEach(
        e -> assertThat(e.point().distance(n.node().at())).as("%s %s", name, n.id()).isLessThanOrEqualTo(t.tolerance().gapM() + 1e-9)));
  }

  /** Another order of instances and another origin: the same ids, with the same kinds. */
  @Test
  void idsStayWhenAFileIsExportedAgain() {
    House house = JoinedRoofs.gableDormer(gable().chimney("stack", "north", 4, 6, 0.9, 0.6, 1.3, Through.WHOLE), "south", "dormer", 5, 1.8,
        1.2, 1.1, pitch(20), JoinedRoofs.Meeting.CUT);
    SortedMap<String, String> plain = kinds(Pipeline.analyse(house, Form.PLAIN));
    assertThat(plain).hasSizeGreaterThan(15);
    assertThat(kinds(Pipeline.analyse(house, Form.PLAIN.shuffled(1)))).isEqualTo(plain);
    assertThat(kinds(Pipeline.analyse(house, Form.PLAIN.shuffled(2).in(Form.Unit.FOOT)))).isEqualTo(plain);
  }

  private static SortedMap<String, String> kinds(Takeoff t) {
    SortedMap<String, String> kinds = new TreeMap<>();
    t.nodes().forEach(n -> kinds.put(n.id(), n.kind().id()));
    return kinds;
  }
}
