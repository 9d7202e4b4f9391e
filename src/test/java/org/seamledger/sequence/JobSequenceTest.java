package org.seamledger.sequence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.SharedModels;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** Every step after what it needs, on every sample; what laps over what is common practice, as the details tell it. */
class JobSequenceTest {

  private static final Path SAMPLES = Path.of("ifc-samples");

  private static Takeoff of(Path model) {
    return Analysis.run(Inputs.ofFiles(List.of(model)), Progress.NONE);
  }

  @TestFactory
  Stream<DynamicTest> everyStepComesAfterWhatItNeeds() throws IOException {
    try (Stream<Path> files = Stream.concat(Files.list(SAMPLES), Files.list(SAMPLES.resolve("worked")))) {
      return files.filter(f -> f.toString().endsWith(".ifc")).sorted().toList().stream()
          .map(f -> DynamicTest.dynamicTest(f.getFileName().toString(), () -> check(of(f))));
    }
  }

  @Test
  void everyStepOfARealModelComesAfterWhatItNeeds() throws IOException {
    for (Path model : SharedModels.all()) {
      if (!model.getFileName().toString().contains("broken")) {
        check(of(model));
      }
    }
  }

  private static void check(Takeoff takeoff) {
    JobSequence sequence = takeoff.sequence();
    assertThat(sequence.cycle()).isEmpty();
    Set<String> done = new HashSet<>();
    Map<String, Step> byId = new HashMap<>();
    for (Step s : sequence.steps()) {
      assertThat(done).as(s.id()).containsAll(s.after());
      assertThat(done.add(s.id())).as(s.id()).isTrue();
      assertThat(s.amount()).as(s.id()).isNotNegative().isFinite();
      byId.put(s.id(), s);
    }
    Set<String> points = new HashSet<>();
    sequence.holdPoints().forEach((place, list) -> list.forEach(h -> {
      assertThat(h.id()).startsWith(place + "/").matches("[A-Za-z0-9-]+/[a-z0-9-]+");
      assertThat(points.add(h.id())).as(h.id()).isTrue();
      assertThat(byId.keySet()).containsAll(h.steps());
      h.steps().forEach(s -> assertThat(byId.get(s).holdPoints()).contains(h.id()));
      assertThat(h.locks().isEmpty() || byId.get(h.locks()).locked()).isTrue();
    }));
    nothingIsLost(takeoff);
  }

  /** What is counted for a line with a detail is fitted in some step: metal, seals and fasteners add up. */
  private static void nothingIsLost(Takeoff takeoff) {
    takeoff.quantities().byJunction().forEach((place, taken) -> {
      List<Step> steps = takeoff.sequence().steps().stream().filter(s -> s.place().equals(place)).toList();
      assertThat(steps.stream().mapToInt(s -> s.metal().size()).sum()).as(place).isEqualTo(taken.metal().size());
      assertThat(steps.stream().mapToInt(s -> s.seals().size()).sum()).as(place).isEqualTo(taken.seals().size());
      assertThat(steps.stream().mapToInt(s -> s.fasteners().size()).sum()).as(place).isEqualTo(taken.fasteners().size());
    });
  }

  /**
   * A gable of two faces: 2 underlayments, 2 panels, 2 seams; along each eave trim and panel ends, along each rake half cleat, zee and
   * trim, along the ridge closures and cap. Counted by hand from the details.
   */
  @Test
  void gable() {
    Takeoff takeoff = of(SAMPLES.resolve("worked").resolve("ridge-40ft.ifc"));
    Map<String, Long> count = new HashMap<>();
    takeoff.sequence().steps().forEach(s -> count.merge(s.work().id(), 1L, Long::sum));
    assertThat(count).containsEntry("underlayment", 2L).containsEntry("panels", 2L).containsEntry("seams", 2L)
        .containsEntry("edge-metal", 6L).containsEntry("panel-ends", 2L).containsEntry("zee", 4L).containsEntry("closures", 1L)
        .containsEntry("cover", 5L).containsEntry("corner-under", 4L).containsEntry("corner", 2L);
    List<String> works = takeoff.sequence().steps().stream().map(s -> s.work().id()).distinct().toList();
    assertThat(works.subList(0, 3)).containsExactly("underlayment", "edge-metal", "corner-under");
    Step cap = last(takeoff, "cover");
    assertThat(cap.after()).contains(cap.place() + "/closures");
    assertThat(cap.locked()).isTrue();
  }

  private static Step last(Takeoff takeoff, String work) {
    List<Step> all = takeoff.sequence().steps().stream().filter(s -> s.work().id().equals(work)).toList();
    return all.get(all.size() - 1);
  }

  /** Beads behind closures stand upright: whatever covers closures waits for somebody with a name. */
  @Test
  void everyCoverOverBeadsIsLocked() {
    Takeoff takeoff = of(SAMPLES.resolve("school.ifc"));
    takeoff.sequence().steps().stream().filter(s -> s.work().id().equals("cover") && s.after().contains(s.place() + "/closures"))
        .forEach(s -> assertThat(s.holdPoints()).contains(s.place() + "/recheck-before-capping"));
    assertThat(takeoff.sequence().steps()).filteredOn(Step::locked).hasSizeGreaterThan(10);
  }

  /**
   * Panels of a gable divided by a step: those below it first, then the joint, then those above, the seams at last. Of 30 panels a side 30
   * lie below, 30 above.
   */
  @Test
  void aJointIsBuiltBetweenThePanelsBelowAndAboveIt(@TempDir Path folder) throws IOException {
    Takeoff takeoff = divided(folder, "\"movementGap\": \"4.2 mm\"");
    check(takeoff);
    List<String> order = takeoff.sequence().steps().stream().map(Step::id).toList();
    assertThat(takeoff.joints()).hasSize(2).allSatisfy(j -> {
      String joint = j.junction().junction().id();
      String face = j.junction().junction().faces().get(0);
      assertThat(List.of("/closures", "/cover", "/cleats")).allSatisfy(work -> assertThat(order.indexOf(joint + work))
          .isBetween(order.indexOf(joint + "/panels-below"), order.indexOf(face + "/panels")));
      assertThat(order.indexOf(joint + "/panel-ends")).isBetween(order.indexOf(face + "/panels"), order.indexOf(face + "/seams"));
      assertThat(step(takeoff, joint + "/cover").locked()).isTrue();
      assertThat(step(takeoff, joint + "/panels-below").after()).contains(face + "/underlayment")
          .anyMatch(id -> id.endsWith("/edge-metal"));
      assertThat(step(takeoff, joint + "/panels-below").panels()).hasSize(30);
      assertThat(step(takeoff, face + "/panels").panels()).hasSize(30);
    });
  }

  /** Pieces of 11 ft lap while the panels are laid: 30 panels a side, and the laps closed before the seams. */
  @Test
  void endLapsAreClosedBeforeTheSeams(@TempDir Path folder) throws IOException {
    Takeoff takeoff = divided(folder, "\"longest\": \"11 ft\"");
    check(takeoff);
    assertThat(takeoff.joints()).hasSize(2).allSatisfy(j -> {
      String lap = j.junction().junction().id() + "/end-lap";
      String face = j.junction().junction().faces().get(0);
      assertThat(step(takeoff, lap).after()).containsExactly(face + "/panels");
      assertThat(step(takeoff, face + "/seams").after()).contains(lap);
      assertThat(step(takeoff, face + "/panels").panels()).hasSize(30);
    });
  }

  private static Takeoff divided(Path folder, String panel) throws IOException {
    Path system = Files.writeString(folder.resolve("s.json"), "{\"panel\": {" + panel + "}}");
    return Analysis.run(Inputs.ofFiles(List.of(SAMPLES.resolve("worked").resolve("ridge-40ft.ifc"))).withSystem(Optional.of(system)),
        Progress.NONE);
  }

  private static Step step(Takeoff takeoff, String id) {
    return takeoff.sequence().steps().stream().filter(s -> s.id().equals(id)).findFirst().orElseThrow();
  }

  /** Two rules that ask for the opposite: what can't be done is said, step by step, and nothing is lost. */
  @Test
  void aCycleNamesItsSteps(@TempDir Path folder) throws IOException {
    String rules = Files.readString(Path.of("shapes", "sequence.ttl"));
    Files.writeString(folder.resolve("sequence.ttl"), rules + """

        prec:closures-after-cover a sh:NodeShape ; sl:precedence "closures-after-cover" ; rdfs:label "the opposite" ; sl:source "none" ;
          sh:node prec:Same ; sh:property [ sh:path sl:work ; sh:hasValue "closures" ] , [ sh:path sl:earlier ; sh:hasValue "cover" ] .
        """);
    Takeoff takeoff = Analysis.run(Inputs.ofFiles(List.of(SAMPLES.resolve("worked").resolve("ridge-40ft.ifc")))
        .withShapes(Optional.of(folder)), Progress.NONE);
    String ridge = step(takeoff, last(takeoff, "closures").id()).place();
    assertThat(takeoff.sequence().cycle()).containsExactlyInAnyOrder(ridge + "/closures", ridge + "/cover");
    assertThat(takeoff.findings()).filteredOn(f -> f.code().equals("sequence/cycle")).singleElement()
        .satisfies(f -> assertThat(f.message()).contains(ridge + "/closures", ridge + "/cover"));
    assertThat(takeoff.sequence().steps()).hasSize(of(SAMPLES.resolve("worked").resolve("ridge-40ft.ifc")).sequence().steps().size());
  }
}
