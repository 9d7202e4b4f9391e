package org.seamledger.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class AcceptedFindingTest {

  private static final Acceptance BY_A = new Acceptance("A. Roofer", "2024-05-31", "known");

  private static Finding finding(String message, String... elements) {
    return Finding.of(Code.FLAT_EDGE, message, elements);
  }

  @Test
  void whatIsAcceptedIsFoundByCodeJunctionAndElementsWhateverItsFigures() {
    AcceptedFinding accepted = new AcceptedFinding("kind/flat-edge", "J1", List.of("e"), 1, BY_A);
    List<Finding> marked = AcceptedFinding.mark(List.of(finding("5 m", "e").at("J1"), finding("5 m", "e").at("J2")), List.of(accepted));
    assertThat(marked).extracting(Finding::acceptance).containsExactly(java.util.Optional.of(BY_A), java.util.Optional.empty());
    assertThat(marked.get(0).isOpenAt(Severity.WARNING)).isFalse();
    assertThat(marked.get(1).isOpenAt(Severity.WARNING)).isTrue();
    assertThat(marked.get(1).isOpenAt(Severity.VIOLATION)).isFalse();
  }

  @Test
  void ofTwoThatAgreeInAllOnlyTheOneThatIsMeant() {
    List<AcceptedFinding> second = List.of(new AcceptedFinding("kind/flat-edge", "", List.of(), 2, BY_A));
    assertThat(AcceptedFinding.mark(List.of(finding("a"), finding("b")), second)).extracting(f -> f.acceptance().isPresent())
        .containsExactly(false, true);
  }

  /** What was accepted place by place before findings were one a cause, and what has lost a place since, is still accepted. */
  @Test
  void oneFindingForSeveralPlacesStaysAccepted() {
    List<Finding> grouped = FindingCauses.of(List.of(finding("5 m", "e").at("J1"), finding("6 m", "e", "f").at("J2")), code -> true);
    assertThat(grouped).singleElement().satisfies(f -> {
      assertThat(f.junctions()).containsExactly("J1", "J2");
      assertThat(f.message()).isEqualTo("5 m; the same at 1 other place");
    });
    AcceptedFinding first = new AcceptedFinding("kind/flat-edge", "J1", List.of("e"), 1, BY_A);
    AcceptedFinding second = new AcceptedFinding("kind/flat-edge", "J2", List.of("e", "f"), 1, BY_A);
    assertThat(AcceptedFinding.mark(grouped, List.of(first, second))).singleElement()
        .satisfies(f -> assertThat(f.acceptance()).contains(BY_A));
    AcceptedFinding more = new AcceptedFinding("kind/flat-edge", "J0", List.of("e", "f", "g"), 1, BY_A);
    assertThat(AcceptedFinding.mark(grouped, List.of(more))).singleElement().satisfies(f -> assertThat(f.acceptance()).contains(BY_A));
    // A place more than was accepted is open.
    assertThat(AcceptedFinding.mark(grouped, List.of(first))).first().satisfies(f -> assertThat(f.acceptance()).isEmpty());
  }

  @Test
  void anAcceptanceOfNothingIsANote() {
    List<Finding> marked = AcceptedFinding.mark(List.of(), List.of(new AcceptedFinding("x/y", "J1", List.of(), 1, BY_A)));
    assertThat(marked).singleElement().satisfies(f -> {
      assertThat(f.severity()).isEqualTo(Severity.INFO);
      assertThat(f.message()).isEqualTo("A. Roofer accepted x/y at junction J1, which this result doesn't have");
    });
  }

  @Test
  void somebodyAcceptsWithAReasonOnADay() {
    assertThatThrownBy(() -> new Acceptance(" ", "", "known")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Acceptance("A", "", "")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Acceptance("A", "2024-02-30", "known")).isInstanceOf(IllegalArgumentException.class);
    assertThat(new Acceptance("A", "2024-05-31T14:00:00+02:00", "known").when()).startsWith("2024");
  }
}
