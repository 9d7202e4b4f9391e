package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whose turn it is, and what becomes of what a worker leaves. */
@Tag("slow")
class QueueTest {

  private static final int ANY = Integer.MAX_VALUE;

  @TempDir
  private Path folder;
  private final String url = TestPostgres.newUrl();
  private Store store;
  private Queue queue;

  @BeforeEach
  void open() {
    store = Store.share(PostgresAddress.of(url, Optional.empty(), Optional.empty()), ModelPlace.folder(folder),
        Processes.Member.here("serve", "1.0", ""));
    queue = store.queue();
  }

  @AfterEach
  void close() {
    store.close();
  }

  private List<String> add(String project, int count) {
    List<String> ids = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      ids.add(store.analyses().add(Analyses.newId(), Optional.of(project), "hall", List.of(), "").id());
    }
    return ids;
  }

  private String project(String name) {
    return store.analyses().addProject(name).id();
  }

  private String taken(int most) {
    return queue.take("me", Analyses.newId(), most).map(StoredAnalysis::id).orElse("none");
  }

  @Test
  void projectsTakeTurnsHoweverManyEachHas() {
    List<String> a = add(project("a"), 4);
    List<String> b = add(project("b"), 2);
    List<String> c = add(project("c"), 1);
    List<String> order = new ArrayList<>();
    for (String id = taken(ANY); !id.equals("none"); id = taken(ANY)) {
      order.add(id);
      store.analyses().end(id, State.FAILED, "", "");
    }
    assertThat(order).containsExactly(a.get(0), b.get(0), c.get(0), a.get(1), b.get(1), a.get(2), a.get(3));
  }

  @Test
  void ofWhichFewestRunComesFirst() {
    List<String> a = add(project("a"), 3);
    assertThat(taken(ANY)).isEqualTo(a.get(0));
    assertThat(taken(ANY)).isEqualTo(a.get(1));
    String b = add(project("b"), 1).get(0);
    assertThat(taken(ANY)).isEqualTo(b);
  }

  @Test
  void aHigherPriorityComesFirstAndALowerLast() {
    List<String> a = add(project("a"), 3);
    store.analyses().prioritize(a.get(2), 1);
    store.analyses().prioritize(a.get(0), -1);
    assertThat(List.of(taken(ANY), taken(ANY), taken(ANY))).containsExactly(a.get(2), a.get(1), a.get(0));
  }

  @Test
  void aProjectHasNoMoreAtOnceThanItsLimit() {
    List<String> a = add(project("a"), 3);
    assertThat(List.of(taken(2), taken(2), taken(2))).containsExactly(a.get(0), a.get(1), "none");
    store.analyses().end(a.get(0), State.CANCELLED, "", "");
    assertThat(taken(2)).isEqualTo(a.get(2));
  }

  @Test
  void whatRunsByATicketThatIsGoneWaitsAgainAndGetsOne() {
    List<String> a = add(project("a"), 2);
    assertThat(taken(ANY)).isEqualTo(a.get(0));
    assertThat(queue.withoutTicket(ANY)).containsExactlyElementsOf(a);
    assertThat(store.analyses().get(a.get(0)).state()).isEqualTo(State.QUEUED);
  }

  @Test
  void whatADeadWorkerLeftIsTakenUpOnceAndThenGivenUp() {
    String id = add(project("a"), 1).get(0);
    assertThat(queue.inherit("me", "ticket")).isEmpty();
    assertThat(queue.take("first", "ticket", ANY)).isPresent();
    assertThat(queue.inherit("second", "another ticket")).isEmpty();
    assertThat(queue.inherit("second", "ticket").orElseThrow().givenUp()).isFalse();
    assertThat(queue.tell(id, "first", "reckons on", 0.5)).as("the first lives, and has it no more").isFalse();
    assertThat(queue.tell(id, "second", "reads", 0.25)).isTrue();
    assertThat(queue.standing(Set.of(id)).get(id)).isEqualTo(new Queue.Standing(State.RUNNING, "reads", 0.25, Optional.empty()));
    assertThat(queue.inherit("third", "ticket").orElseThrow().givenUp()).isTrue();
    assertThat(store.analyses().get(id).problemCode()).contains("analysis/died");
    assertThat(queue.inherit("third", "ticket")).isEmpty();
  }

  @Test
  void aWorkerThatWasOnlyCutOffCountsAsNoDeath() {
    String id = add(project("a"), 1).get(0);
    queue.take("first", "ticket", ANY);
    queue.inherit("second", "ticket");
    queue.survived(id, "first");
    assertThat(queue.inherit("third", "ticket").orElseThrow().givenUp()).as("one death").isFalse();
  }

  @Test
  void whatIsPutBackIsAsBefore() {
    String id = add(project("a"), 1).get(0);
    for (int i = 0; i < 5; i++) {
      assertThat(queue.take("me", "ticket", ANY)).isPresent();
      queue.putBack(id, "somebody else");
      assertThat(store.analyses().get(id).state()).isEqualTo(State.RUNNING);
      queue.putBack(id, "me");
      assertThat(store.analyses().get(id).state()).isEqualTo(State.QUEUED);
    }
  }
}
