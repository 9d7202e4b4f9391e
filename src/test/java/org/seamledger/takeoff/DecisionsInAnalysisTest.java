package org.seamledger.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.progress.Progress;
import org.seamledger.detail.Decision;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kinds;
import org.seamledger.export.CsvLedger;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.JunctionReport;
import org.seamledger.export.PlanDrawing;
import org.seamledger.export.SectionDrawing;
import org.seamledger.export.TextReport;
import org.seamledger.finding.Finding;

/** What people choose by hand, from the model to every output. The gatehouse: a ridge of 3 m, four hips of 5.25 m, a chimney, a vent. */
@Tag("slow")
class DecisionsInAnalysisTest {

  private static final List<Path> GATEHOUSE = List.of(Path.of("ifc-samples", "gatehouse.ifc"));
  private static final Takeoff BY_RULES = analyse();

  private static Takeoff analyse(Decision... decisions) {
    return Analysis.run(Inputs.ofFiles(GATEHOUSE).withDecisions(List.of(decisions)), Progress.NONE);
  }

  private static String first(String kind) {
    return BY_RULES.junctions().stream().filter(j -> j.kind().equals(kind)).findFirst().orElseThrow().junction().id();
  }

  private static DetailedJunction at(Takeoff takeoff, String id) {
    return takeoff.detailed().stream().filter(j -> j.junction().junction().id().equals(id)).findFirst().orElseThrow();
  }

  private static List<String> messages(Takeoff takeoff, String code) {
    return takeoff.findings().stream().filter(f -> f.code().equals(code)).map(Finding::message).toList();
  }

  private static String text(Takeoff takeoff, Writer writer) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    writer.write(takeoff, out);
    return out.toString(StandardCharsets.UTF_8);
  }

  @FunctionalInterface
  private interface Writer {
    void write(Takeoff takeoff, java.io.OutputStream out) throws IOException;
  }

  @Test
  void aChosenKindGetsTheDetailOfItsRules() {
    String hip = first("hip");
    Takeoff decided = analyse(new Decision(hip, "valley", "", "it drains inwards"));
    DetailedJunction there = at(decided, hip);
    assertThat(there.junction().kind()).isEqualTo("valley");
    assertThat(there.detail().id()).isEqualTo("valley");
    assertThat(there.decided().orElseThrow().kindByRules()).isEqualTo("hip");
    assertThat(there.decided().orElseThrow().detailByRules()).isEqualTo("hip");
    assertThat(messages(decided, "review/chosen-by-hand")).singleElement().asString()
        .contains("kind valley instead of hip").contains("it drains inwards");
  }

  /** A hip cap runs the whole line once, a valley pan too: the metal by hand from the line's length, lapped by nobody here. */
  @Test
  void quantitiesFollow() {
    String hip = first("hip");
    Takeoff decided = analyse(new Decision(hip, "valley", "", "it drains inwards"));
    double length = at(decided, hip).junction().junction().lengthM();
    assertThat(length).isEqualTo(5.25, within(1e-6));
    assertThat(partM(BY_RULES, "hip cap")).isEqualTo(4 * 5.25, within(1e-6));
    assertThat(partM(decided, "hip cap")).isEqualTo(3 * 5.25, within(1e-6));
    assertThat(partM(decided, "valley pan")).isEqualTo(5.25, within(1e-6));
  }

  private static double partM(Takeoff takeoff, String part) {
    return takeoff.quantities().byJunction().values().stream().flatMap(q -> q.metal().stream()).filter(m -> m.part().equals(part))
        .mapToDouble(m -> m.lengthM()).sum();
  }

  @Test
  void nothingElseChanges() {
    String hip = first("hip");
    Takeoff decided = analyse(new Decision(hip, "valley", "", "it drains inwards"));
    assertThat(decided.junctions().stream().map(j -> j.junction()).toList())
        .isEqualTo(BY_RULES.junctions().stream().map(j -> j.junction()).toList());
    // Where the line ends its node is made of other pieces, too.
    Set<String> touched = new TreeSet<>(Set.of(hip));
    BY_RULES.nodes().stream().filter(n -> n.node().junctions().contains(hip)).forEach(n -> touched.add(n.id()));
    assertThat(touched).hasSize(3);
    BY_RULES.quantities().byJunction().forEach((id, q) -> {
      if (!touched.contains(id)) {
        assertThat(decided.quantities().byJunction().get(id)).isEqualTo(q);
      }
    });
  }

  @Test
  void noDetailMeansNothingToSeal() {
    String ridge = first("ridge");
    Takeoff decided = analyse(new Decision(ridge, "", "none", "another trade's"));
    assertThat(decided.quantities().byJunction().get(ridge).metal()).isEmpty();
    assertThat(messages(decided, "detail/none")).isEmpty();
  }

  @Test
  void everyOutputSaysThatAPersonChose() throws IOException {
    String ridge = first("ridge");
    Takeoff decided = analyse(new Decision(ridge, "", "ridge-vented", "=the attic is vented"));
    assertThat(text(decided, JsonLedger::write)).contains("\"decided\" : {").contains("\"detail\" : \"ridge-unvented\"")
        .contains("=the attic is vented");
    assertThat(text(decided, CsvLedger::write)).contains("kindByRules,detailByRules,decidedBecause")
        .contains("ridge,ridge-unvented,'=the attic is vented");
    assertThat(text(decided, TextReport::write)).contains("Overrides  1 junction", "Manual overrides\n----------------",
        ridge + ": detail ridge-vented instead of ridge-unvented. Reason: =the attic is vented");
    assertThat(text(decided, (t, out) -> JunctionReport.write(t, at(t, ridge), at(t, ridge).junction().explanation(), out)))
        .contains("Manual override", "=the attic is vented", "What the rules say");
    assertThat(PlanDrawing.sheets(decided, SheetSetup.DEFAULT).get(0)).contains(ridge.substring(0, 4) + "* · 3.000 m")
        .contains("A star after an id");
    assertThat(SectionDrawing.svg(decided, ridge, SheetSetup.DEFAULT)).contains("Detail ridge-vented · manual override");
    assertThat(PlanDrawing.sheets(BY_RULES, SheetSetup.DEFAULT).get(0)).doesNotContain("A star after an id");
  }

  @Test
  void whatHasNoEffectIsSaid() {
    Takeoff decided = analyse(new Decision("Jnowhere", "hip", "", "x"), new Decision(first("pipe"), "", "bagel", "x"));
    assertThat(messages(decided, "review/unknown-junction")).singleElement().asString().contains("Jnowhere");
    assertThat(messages(decided, "review/unknown-detail")).singleElement().asString().contains("bagel");
    assertThat(decided.decided()).isEmpty();
    assertThat(decided.detailed()).isEqualTo(BY_RULES.detailed());
  }

  @Test
  void aDetailOfAnotherKindIsAWarningAndOneAgainstTheSystemIsNot() {
    String ridge = first("ridge");
    assertThat(messages(analyse(new Decision(ridge, "", "ridge-vented", "x")), "review/unfit-detail")).isEmpty();
    assertThat(messages(analyse(new Decision(ridge, "", "pipe-in-pan", "x")), "review/unfit-detail")).singleElement().asString()
        .contains("needs kind pipe; kind is ridge");
    assertThat(messages(analyse(new Decision(first("curb-side"), "", "ridge-unvented", "x")), "review/unfit-detail")).hasSize(2)
        .anyMatch(m -> m.contains("no seam ends at this line"));
  }

  /** Every kind and every detail, on lines that it was never meant for: bad to build, but no reason to fail. */
  static Stream<List<Decision>> everything() {
    List<String> ids = BY_RULES.junctions().stream().map(j -> j.junction().id()).toList();
    List<String> kinds = new ArrayList<>(Kinds.ALL);
    List<String> details = new ArrayList<>(BY_RULES.detailTitles().keySet());
    int rounds = Math.max(kinds.size(), details.size());
    return IntStream.range(0, rounds).mapToObj(r -> IntStream.range(0, ids.size()).mapToObj(i -> new Decision(ids.get(i),
        kinds.get((r + i) % kinds.size()), (r + i) % 3 == 0 ? "" : details.get((r * 5 + i * 7) % details.size()), "to see what happens"))
        .toList());
  }

  @ParameterizedTest
  @MethodSource("everything")
  void nothingThatCanBeChosenBreaksAnything(List<Decision> decisions) throws IOException {
    Takeoff decided = analyse(decisions.toArray(new Decision[0]));
    assertThat(decided.decided()).hasSameSizeAs(decisions);
    assertThat(text(decided, JsonLedger::write)).doesNotContain("NaN").doesNotContain("Infinity");
    assertThat(text(decided, TextReport::write)).doesNotContain("NaN").doesNotContain("Infinity");
    assertThat(text(decided, CsvLedger::write)).doesNotContain("NaN");
    assertThat(PlanDrawing.sheets(decided, SheetSetup.DEFAULT).get(0)).doesNotContain("NaN");
    for (DetailedJunction j : decided.detailed()) {
      assertThat(SectionDrawing.svg(decided, j.junction().junction().id(), SheetSetup.DEFAULT)).doesNotContain("NaN")
          .doesNotContain("Infinity");
    }
  }
}
