package org.seamledger.detail;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.seamledger.finding.Finding;
import org.seamledger.finding.Severity;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;
import org.seamledger.shacl.Rules;

class DesignReviewTest {

  private static final Rules RULES = Rules.packaged();
  private static final Map<String, Object> SYSTEM = new TreeMap<>(Map.of("panelMetal", "zinc", "flashingMetal", "zinc", "fixedAt", "eave",
      "cricketAboveM", 0.762, "sealSeamsBelowDegrees", 14.0362, "flashingClearanceM", 0.3048));

  @Test
  void withoutFactsNothingIsFound() {
    DesignReview review = new DesignReview(RULES, Map.of());
    assertThat(review.ofSystem()).isEmpty();
    assertThat(review.ofJunction(junction("hip", Facts.builder().build(), "hip"), Map.of(), Map.of())).isEmpty();
  }

  @Test
  void messagesCarryTheFiguresWithTheirUnits() {
    DesignReview review = new DesignReview(RULES, SYSTEM);
    Facts facts = Facts.builder().number("widthAcrossFallM", 0.9).number("lowRiseDegrees", 20).build();
    List<Finding> found = review.ofJunction(junction("curb-upslope", facts, "curb-upslope-cricket"),
        Map.of("tapeSpacingM", 0.1524, "tapeCoverageShare", 0.875), Map.of());
    assertThat(found).containsExactly(
        new Finding("drainage/no-cricket", Severity.WARNING,
            "a penetration 900 mm (35.433 in) wide stands perpendicular to the slope and the model shows no cricket behind it", "j",
            List.of("0abc")),
        new Finding("tape/spacing", Severity.WARNING, "fasteners at a spacing of up to 152 mm (6 in) press 87.5 % of the tape", "j",
            List.of("0abc")));
  }

  @Test
  void aDetailOfNothingButABeadIsFound() {
    Detail caulked = new Detail("caulked", "Caulked", List.of(), List.of(new Seal(Seal.Form.BEAD, Seal.Role.PRIMARY,
        Seal.Exposure.EXPOSED, "in the corner", 1, On.LINE, Run.CONTINUOUS, 0, "bead.size", "")), List.of(), List.of(), "nothing", false,
        "");
    DetailedJunction j = new DetailedJunction(junction("hip", Facts.builder().build(), "hip").junction(), caulked);
    assertThat(new DesignReview(RULES, SYSTEM).ofJunction(j, Map.of(), Map.of())).extracting(Finding::code)
        .containsExactly("seal/bead-only", "seal/in-view");
  }

  @Test
  void noDetailOfTheProgramIsFoundWanting() {
    Details details = new Details(RULES);
    DesignReview review = new DesignReview(RULES, SYSTEM);
    details.book().forEach((id, detail) -> {
      String kind = Kinds.ALL.stream().filter(id::startsWith).max((a, b) -> a.length() - b.length()).orElse("flat-edge");
      assertThat(review.ofJunction(new DetailedJunction(junction(kind, Facts.builder().build(), id).junction(), detail), Map.of(), Map.of()))
          .as(id).extracting(Finding::code).doesNotContain("seal/bead-only", "seal/in-view");
    });
  }

  @Test
  void everyFindingHasItsReasonAndItsAction() {
    Map<String, Advice> advice = new DesignReview(RULES, Map.of()).advice();
    assertThat(advice).hasSizeGreaterThan(30);
    advice.forEach((code, a) -> {
      assertThat(a.reason()).as(code).endsWith(".").hasSizeGreaterThan(30);
      assertThat(a.action()).as(code).endsWith(".");
    });
  }

  private static DetailedJunction junction(String kind, Facts facts, String detail) {
    Junction j = new Junction("j", List.of(new Vec3(0, 0, 0), new Vec3(3, 0, 0)), List.of("F1"), List.of("0abc"), facts);
    return new DetailedJunction(new KindedJunction(j, KindBook.read(RULES).kind(kind), new Explanation(List.of(kind), "", List.of())),
        new Details(RULES).book().get(detail));
  }
}
