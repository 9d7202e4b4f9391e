package org.seamledger.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.seamledger.finding.TopicAnswer.Verdict;

class TopicAnswerTest {

  private static final Finding OPEN = new Finding("design/x", Severity.WARNING, "so it is", "j1", List.of("e"));
  private static final Finding ACCEPTED = OPEN.accepted(new Acceptance("A", "2024-05-31", "as drawn"));
  private static final UUID ID = TopicId.all(List.of(TopicId.Subject.of(OPEN)), List.of("a.ifc")).get(0);

  private static Finding marked(Finding finding, Verdict verdict, String by, String when, Remark... remarks) {
    List<Finding> all = TopicAnswer.mark(List.of(finding), List.of(ID),
        List.of(new TopicAnswer(ID.toString(), "title", "word", verdict, by, when, "", List.of(remarks))));
    assertThat(all).hasSize(1);
    return all.get(0);
  }

  @Test
  void closedIsAcceptedByWhoClosedItForTheLastRemark() {
    Finding f = marked(OPEN, Verdict.CLOSED, "B", "2024-06-02T00:00:00Z", new Remark("C", "2024-06-01T00:00:00Z", "is it?"),
        new Remark("B", "2024-06-02T00:00:00Z", "it is"));
    assertThat(f.acceptance()).contains(new Acceptance("B", "2024-06-02T00:00:00Z", "it is"));
    assertThat(f.remarks()).containsExactly(new Remark("C", "2024-06-01T00:00:00Z", "is it?"));
  }

  @Test
  void closedWithoutAWord() {
    Finding f = marked(OPEN, Verdict.CLOSED, "", "");
    assertThat(f.acceptance()).contains(new Acceptance(TopicAnswer.UNNAMED, "", "closed as \"word\" without a remark"));
  }

  /** A topic that was open before somebody accepted the finding says nothing against that. */
  @Test
  void openLaterReopens() {
    assertThat(marked(ACCEPTED, Verdict.OPEN, "B", "2024-05-30T00:00:00Z")).isEqualTo(ACCEPTED);
    Finding f = marked(ACCEPTED, Verdict.OPEN, "B", "2024-06-02T00:00:00Z", new Remark("B", "2024-06-02T00:00:00Z", "not so"));
    assertThat(f.acceptance()).isEmpty();
    assertThat(f.remarks()).containsExactly(new Remark("A", "2024-05-31", "as drawn"), new Remark("B", "2024-06-02T00:00:00Z", "not so"));
    assertThat(marked(ACCEPTED, Verdict.REOPENED, "B", "").acceptance()).isEmpty();
  }

  @Test
  void anAnswerToNothingIsANote() {
    List<Finding> all = TopicAnswer.mark(List.of(OPEN), List.of(ID), List.of(new TopicAnswer("x", "Elsewhere", "Open", Verdict.OPEN, "", "",
        "", List.of(new Remark("B", "", "move the duct")))));
    assertThat(all).hasSize(2);
    assertThat(all.get(0)).isEqualTo(OPEN);
    assertThat(all.get(1).code()).isEqualTo("review/unknown-topic");
    assertThat(all.get(1).message()).contains("Elsewhere", "B: move the duct");
  }

  @Test
  void theLaterOfTwoAnswersHolds() {
    TopicAnswer early = new TopicAnswer(ID.toString(), "t", "Closed", Verdict.CLOSED, "B", "2024-06-01T00:00:00Z", "",
        List.of(new Remark("B", "2024-06-01T00:00:00Z", "ok")));
    TopicAnswer late = new TopicAnswer(ID.toString(), "t", "Open", Verdict.OPEN, "C", "2024-06-02T00:00:00Z", "", List.of());
    for (List<TopicAnswer> order : List.of(List.of(early, late), List.of(late, early))) {
      Finding f = TopicAnswer.mark(List.of(OPEN), List.of(ID), order).get(0);
      assertThat(f.acceptance()).isEmpty();
      assertThat(f.remarks()).containsExactly(new Remark("B", "2024-06-01T00:00:00Z", "ok"));
    }
  }

  /** What is the same in the next export gives the same id; findings of the whole model are each building's own. */
  @Test
  void idsOfTopics() {
    TopicId.Subject a = TopicId.Subject.of(OPEN);
    TopicId.Subject whole = new TopicId.Subject("design/x", "", List.of());
    assertThat(TopicId.all(List.of(a, a, whole), List.of("a.ifc"))).doesNotHaveDuplicates();
    assertThat(TopicId.all(List.of(a), List.of("b.ifc"))).containsExactly(ID);
    assertThat(TopicId.all(List.of(whole), List.of("b.ifc"))).isNotEqualTo(TopicId.all(List.of(whole), List.of("a.ifc")));
    assertThat(ID.version()).isEqualTo(3);
  }
}
