package org.seamledger.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;

import org.seamledger.run.TakeoffResult;
import org.seamledger.run.Analyzer;
import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.WatchedRevision.Stage;
import org.seamledger.ledger.WatchedRevision;
import org.seamledger.progress.Progress;
import org.seamledger.source.Attachment;
import org.seamledger.source.ModelServerException.Reason;
import org.seamledger.source.ModelServerException;
import org.seamledger.source.OpenModel;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;
import org.slf4j.LoggerFactory;

/** Watching a server that is kept in memory: what is done, in which order, how often, and what is left of it when things go wrong. */
@Tag("slow")
class WatchTest {

  private static final String OFFICE = "office";

  /** Ends everything at once, as a killed process does: from then on nothing gets into storage any more. */
  private static final class Killed extends Error {
    private static final long serialVersionUID = 1;
  }

  private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-02T08:00:00Z"), ZoneOffset.UTC);

  @TempDir
  private Path data;
  private Store store;
  private final MemoryServers servers = new MemoryServers();
  private final MemoryServers.Shelf shelf = servers.add(OFFICE);
  private final ServedProject school = shelf.addProject("School");
  private final List<String> analysed = new ArrayList<>();
  private final List<String> told = new ArrayList<>();
  private final Health health = new Health(CLOCK);
  private Analyzer<Takeoff> run = this::takeoff;

  @BeforeEach
  void open() {
    store = Store.open(data, Optional.empty());
  }

  @AfterEach
  void close() {
    store.close();
  }

  /** Another process on the same data folder. */
  private void restart() {
    store.close();
    store = Store.open(data, Optional.empty());
    store.analyses().unfinished();
  }

  private Killed killed() {
    store.close();
    return new Killed();
  }

  private Takeoff takeoff(Inputs inputs, Progress progress) {
    try (OpenModel model = inputs.models().get(0).open()) {
      ByteBuffer bytes = ByteBuffer.allocate((int) model.bytes());
      model.channel().read(bytes);
      String words = new String(bytes.array(), StandardCharsets.UTF_8);
      if (words.contains("broken")) {
        throw new UnreadableModelException(model.file(), 3, 7, "a semicolon", "the end of the file");
      }
      analysed.add(words);
      return Takeoffs.boatHouse();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private ServerWatch watch() {
    return watch((server, project) -> true);
  }

  private ServerWatch watch(WatchTarget wanted) {
    return new ServerWatch(OFFICE, setting(wanted, Duration.ofMinutes(1)));
  }

  private Watching.Setting setting(WatchTarget wanted, Duration every) {
    LocalAnalyst analyst =
        new LocalAnalyst(store, data.resolve("scratch"), (inputs, progress) -> new TakeoffResult(run.analyze(inputs, progress)));
    return new Watching.Setting(servers, wanted, store, download(), every, analyst, e -> told.add(e.line()), CLOCK, health);
  }

  private Download download() {
    return new Download(store.uploads(), data.resolve("scratch"), 1 << 20);
  }

  private RoundOutcome round() throws InterruptedException {
    return watch().round();
  }

  private ServedRevision checkIn(String words) {
    return shelf.checkIn(school, words, words.getBytes(StandardCharsets.UTF_8));
  }

  private List<String> titles(ServedRevision revision) {
    return shelf.attached(revision).stream().map(Attachment::title).toList();
  }

  private String text(ServedRevision revision, String title) {
    return shelf.attached(revision).stream().filter(a -> a.title().equals(title)).findFirst()
        .map(a -> new String(a.content(), StandardCharsets.UTF_8)).orElse("");
  }

  private List<Stage> stages() {
    return store.watches().revisions(OFFICE, school.id()).stream().map(WatchedRevision::stage).toList();
  }

  private static Consumer<String> failing(String call, Reason reason, int times) {
    int[] left = {times};
    return c -> {
      if (c.equals(call) && left[0]-- > 0) {
        throw new ModelServerException(reason, "it is made to fail");
      }
    };
  }

  @Test
  void aWatchBeginsWithTheNewestRevision() throws InterruptedException {
    ServedRevision old = checkIn("one");
    ServedRevision newest = checkIn("two");
    assertThat(round()).isEqualTo(RoundOutcome.FINE);
    assertThat(analysed).containsExactly("two");
    assertThat(titles(old)).isEmpty();
    assertThat(titles(newest)).containsExactly("seamledger r0002 ledger.json", "seamledger r0002 report.txt");
    assertThat(text(newest, Answers.ledger(2))).startsWith("{").contains("\"contract\" : 1");
    assertThat(text(newest, Answers.report(2))).contains("junctions of a standing-seam metal roof", "Lengths by kind");
    assertThat(stages()).containsExactly(Stage.PASSED, Stage.ANSWERED);
  }

  /** Copy and topics go with the answer where the operator asks for them, once. */
  @Test
  void leavesWhatTheOperatorAsksFor() throws InterruptedException, IOException {
    servers.attaching("ifc", "bcf");
    run = (inputs, progress) -> org.seamledger.takeoff.Analysis.run(inputs, progress);
    String model = java.nio.file.Files.readString(Path.of("ifc-samples/gatehouse.ifc"), StandardCharsets.UTF_8);
    ServedRevision revision = checkIn(model);
    assertThat(round()).isEqualTo(RoundOutcome.FINE);
    assertThat(titles(revision)).containsExactly(Answers.ledger(1), Answers.report(1), Answers.topics(1), Answers.copy(1));
    assertThat(text(revision, Answers.copy(1))).startsWith(model.substring(0, model.lastIndexOf("ENDSEC;")))
        .contains("IFCELEMENTASSEMBLY(");
    assertThat(text(revision, Answers.topics(1))).startsWith("PK");
    round();
    assertThat(titles(revision)).hasSize(4);
    ServedRevision broken = checkIn("broken");
    round();
    assertThat(titles(broken)).as("nothing to hand on").containsExactly(Answers.report(2));
  }

  @Test
  void everyRevisionThatCameSinceIsAnsweredOnceInItsOrder() throws InterruptedException {
    ServedRevision one = checkIn("one");
    round();
    ServedRevision two = checkIn("two");
    ServedRevision three = checkIn("three");
    round();
    restart();
    round();
    round();
    assertThat(analysed).containsExactly("one", "two", "three");
    assertThat(titles(one)).containsExactly("seamledger r0001 ledger.json", "seamledger r0001 report.txt");
    assertThat(titles(two)).containsExactly("seamledger r0002 ledger.json", "seamledger r0002 report.txt",
        "seamledger r0002 changes since r0001.txt",
        "seamledger r0002 changes since r0001.json");
    assertThat(titles(three)).containsExactly(Answers.ledger(3), Answers.report(3), Answers.changes(3, 2), Answers.changesJson(3, 2));
    assertThat(text(two, Answers.changes(2, 1))).startsWith("seamledger: what changed from revision " + one.number() + " (one) to revision "
        + two.number() + " (two)\n").contains("0 added, 0 gone, 0 changed");
    assertThat(store.analyses().list()).hasSize(3).allMatch(a -> a.state() == State.DONE);
    assertThat(store.analyses().projects()).as("one project, three revisions").singleElement()
        .satisfies(p -> assertThat(p.name() + p.revisions()).isEqualTo("School3"));
  }

  /** The process is killed at its first call of the server, at its second, and so on until one run gets through. */
  @Test
  void aProcessThatDiesAnywhereLeavesWorkThatTheNextOneEnds() throws InterruptedException {
    int deaths = 0;
    for (int at = 1;; at++) {
      ServedRevision r = checkIn("model " + at);
      int[] left = {at};
      boolean[] died = {false};
      shelf.before = call -> {
        if (--left[0] == 0) {
          died[0] = true;
          throw killed();
        }
      };
      try {
        round();
      } catch (Killed e) {
        deaths++;
      }
      shelf.before = call -> {};
      restart();
      assertThat(round()).isEqualTo(RoundOutcome.FINE);
      assertThat(titles(r)).as("killed at call %s", at).doesNotHaveDuplicates()
          .contains(Answers.ledger(r.number()), Answers.report(r.number())).hasSize(at == 1 ? 2 : 4);
      if (!died[0]) {
        break;
      }
    }
    assertThat(deaths).as("calls of a whole round, each of which was cut once").isGreaterThanOrEqualTo(11);
    assertThat(analysed).as("each model once").hasSize(deaths + 1).doesNotHaveDuplicates();
  }

  @Test
  void aConnectionThatBreaksAnywhereIsTakenUpAgain() throws InterruptedException {
    for (int at = 1;; at++) {
      ServedRevision r = checkIn("model " + at);
      int[] left = {at};
      shelf.before = call -> {
        if (--left[0] == 0) {
          throw new ModelServerException(Reason.UNREACHABLE, "the connection broke");
        }
      };
      RoundOutcome first = round();
      boolean broke = left[0] <= 0;
      shelf.before = call -> {};
      assertThat(first).isEqualTo(broke ? RoundOutcome.PASSING : RoundOutcome.FINE);
      assertThat(round()).isEqualTo(RoundOutcome.FINE);
      assertThat(titles(r)).as("broken at call %s", at).doesNotHaveDuplicates().hasSize(at == 1 ? 2 : 4);
      if (!broke) {
        break;
      }
    }
    assertThat(analysed).doesNotHaveDuplicates();
    assertThat(uploads()).as("models of analyses and nothing else").hasSize(analysed.size());
  }

  private List<Path> uploads() {
    try (Stream<Path> all = Files.walk(data)) {
      return all.filter(Files::isRegularFile).filter(p -> p.toString().matches(".*(uploads|scratch).*")).toList();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void aProcessThatDiesInAnAnalysisRunsItAgainOnTheSameFile() throws InterruptedException {
    ServedRevision r = checkIn("one");
    List<String> calls = new ArrayList<>();
    shelf.before = calls::add;
    run = (inputs, progress) -> {
      throw killed();
    };
    assertThatThrownBy(this::round).isInstanceOf(Killed.class);
    restart();
    run = this::takeoff;
    assertThat(round()).isEqualTo(RoundOutcome.FINE);
    assertThat(analysed).containsExactly("one");
    assertThat(calls).filteredOn("download"::equals).hasSize(1);
    assertThat(store.analyses().list()).hasSize(1);
    assertThat(titles(r)).hasSize(2);
  }

  @Test
  void aModelThatCantBeReadIsAnsweredWithAReportThatSaysSoAndNotTriedAgain() throws InterruptedException {
    checkIn("one");
    round();
    ServedRevision broken = checkIn("broken");
    List<String> calls = new ArrayList<>();
    shelf.before = calls::add;
    assertThat(round()).isEqualTo(RoundOutcome.FINE);
    assertThat(titles(broken)).containsExactly(Answers.report(broken.number()));
    assertThat(text(broken, Answers.report(broken.number()))).contains(
        "revision " + broken.number() + " (broken) of School was not analysed",
        "School, revision 2:3:7: expected a semicolon, found the end of the file");
    round();
    assertThat(calls).filteredOn("download"::equals).hasSize(1);
    ServedRevision mended = checkIn("mended");
    round();
    assertThat(titles(mended)).as("compared with the last one that could be read").hasSize(4)
        .contains(Answers.changes(mended.number(), broken.number() - 1));
  }

  @Test
  void aModelThatTheServerCantDeliverIsAskedForThreeTimes() throws InterruptedException {
    ServedRevision r = checkIn("one");
    List<String> calls = new ArrayList<>();
    shelf.before = call -> {
      calls.add(call);
      failing("download", Reason.UNUSABLE, 1).accept(call);
    };
    assertThat(round()).isEqualTo(RoundOutcome.TROUBLE);
    restart();
    assertThat(round()).isEqualTo(RoundOutcome.TROUBLE);
    assertThat(titles(r)).isEmpty();
    assertThat(round()).isEqualTo(RoundOutcome.FINE);
    assertThat(titles(r)).containsExactly(Answers.report(r.number()));
    assertThat(text(r, Answers.report(r.number()))).contains("it is made to fail");
    round();
    assertThat(calls).filteredOn("download"::equals).hasSize(RevisionFetch.MOST_DOWNLOADS);
  }

  @Test
  void aModelThatIsTooLargeIsNotKept() throws InterruptedException {
    ServedRevision r = shelf.checkIn(school, "", new byte[(1 << 20) + 1]);
    round();
    assertThat(text(r, Answers.report(r.number()))).contains("expected a model of at most 1048576 bytes");
    assertThat(uploads()).isEmpty();
  }

  @Test
  void whereAnswersAreRefusedItIsNotOfferedForEver() throws InterruptedException {
    checkIn("one");
    List<String> calls = new ArrayList<>();
    shelf.before = call -> {
      calls.add(call);
      failing("attach", Reason.REFUSED, 1).accept(call);
    };
    for (int i = 0; i < 10; i++) {
      assertThat(round()).isEqualTo(i < RevisionSteps.MOST_ANSWERS ? RoundOutcome.TROUBLE : RoundOutcome.FINE);
    }
    assertThat(calls).filteredOn("attach"::equals).hasSize(RevisionSteps.MOST_ANSWERS);
    assertThat(stages()).containsExactly(Stage.GIVEN_UP);
    assertThat(store.watches().revisions(OFFICE, school.id()).get(0).problem()).contains("it is made to fail");
  }

  @Test
  void onlyWhatIsWantedIsWatchedAndOneProjectsTroubleIsNotAnothers() throws InterruptedException {
    checkIn("one");
    ServedProject barn = shelf.addProject("Barn");
    ServedRevision inBarn = shelf.checkIn(barn, "", "barn".getBytes(StandardCharsets.UTF_8));
    watch((server, project) -> project.name().equals("Barn")).round();
    assertThat(analysed).containsExactly("barn");
    assertThat(store.watches().list()).hasSize(1);
    shelf.remove(barn);
    assertThat(round()).as("a project is gone").isEqualTo(RoundOutcome.PASSING);
    assertThat(analysed).containsExactly("barn", "one");
    assertThat(store.watches().get(OFFICE, barn.id()).orElseThrow().problemCode()).contains("server/not-found");
    assertThat(titles(inBarn)).hasSize(2);
  }

  @Test
  void aRefusedLoginIsNotedWithTheProjectsAndGoneAfterAGoodRound() throws InterruptedException {
    checkIn("one");
    round();
    shelf.before = failing("connect", Reason.REFUSED, 1);
    assertThat(round()).isEqualTo(RoundOutcome.TROUBLE);
    assertThat(store.watches().get(OFFICE, school.id()).orElseThrow().problemCode()).contains("server/refused");
    assertThat(told).contains("event=trouble server=office detail=\"server/refused: it is made to fail\"");
    round();
    assertThat(store.watches().get(OFFICE, school.id()).orElseThrow().problem()).isEmpty();
  }

  @Test
  void whatWasSwitchedOffAndOnAgainBeginsWithTheNewest() throws InterruptedException {
    checkIn("one");
    round();
    store.watches().turn(OFFICE, school.id(), "School", false);
    checkIn("two");
    checkIn("three");
    store.watches().turn(OFFICE, school.id(), "School", true);
    round();
    assertThat(analysed).containsExactly("one", "three");
    checkIn("four");
    round();
    assertThat(analysed).containsExactly("one", "three", "four");
  }

  @Test
  void anAnalysisThatWasStoppedByHandIsLeftAtThat() throws InterruptedException {
    ServedRevision r = checkIn("one");
    run = (inputs, progress) -> {
      store.analyses().end(store.analyses().list().get(0).id(), State.CANCELLED, "cancelled", "Cancelled on request.");
      return Takeoffs.boatHouse();
    };
    assertThat(round()).isEqualTo(RoundOutcome.FINE);
    assertThat(stages()).containsExactly(Stage.GIVEN_UP);
    assertThat(titles(r)).isEmpty();
  }

  @Test
  void roundsFollowTheirPaceUntilTheyAreStopped() {
    List<RoundOutcome> outcomes = List.of(RoundOutcome.FINE, RoundOutcome.PASSING, RoundOutcome.PASSING, RoundOutcome.FINE);
    List<Duration> pauses = new ArrayList<>();
    int[] rounds = {0};
    new Rounds(OFFICE, () -> outcomes.get(rounds[0]++), new Backoff(Duration.ofSeconds(10), Duration.ofSeconds(100), new Random(5)),
        pause -> {
          pauses.add(pause);
          if (pauses.size() == outcomes.size()) {
            throw new InterruptedException();
          }
        }, setting((s, p) -> true, Duration.ofMinutes(1))).run();
    assertThat(pauses).hasSize(4);
    assertThat(pauses.get(1)).isBetween(Duration.ofSeconds(16), Duration.ofSeconds(20));
    assertThat(pauses.get(2)).isBetween(Duration.ofSeconds(32), Duration.ofSeconds(40));
    assertThat(pauses.get(3)).isBetween(Duration.ofSeconds(8), Duration.ofSeconds(10));
    assertThat(told).last().isEqualTo("event=stopped server=office");
  }

  @Test
  void aWatchRunsOnItsOwnWakesWhenCalledAndStopsWhenAsked() throws InterruptedException {
    ServedRevision one = checkIn("one");
    try (Watching watching = new Watching(setting((s, p) -> true, Duration.ofHours(1)))) {
      watching.start(List.of(OFFICE));
      await(() -> titles(one).size() == 2);
      ServedRevision two = checkIn("two");
      watching.wake(OFFICE);
      await(() -> titles(two).size() == 4);
    }
    assertThat(Thread.getAllStackTraces().keySet()).noneMatch(t -> t.getName().equals("watch-office"));
  }

  /** As after an update that left a jar out: the class is missing only when it is needed. */
  private static NoClassDefFoundError missingClass() {
    return new NoClassDefFoundError("org/example/Missing");
  }

  @Test
  void aFaultOfTheProgramAtARevisionIsTriedThreeTimesThenGivenUpAndTheNextOneIsDone() throws InterruptedException {
    ServedRevision r = checkIn("one");
    int[] runs = {0};
    run = (inputs, progress) -> {
      runs[0]++;
      throw missingClass();
    };
    for (int i = 1; i <= RevisionSteps.MOST_FAULTS; i++) {
      assertThatThrownBy(this::round).isInstanceOf(NoClassDefFoundError.class);
    }
    assertThat(round()).as("nothing is left to do").isEqualTo(RoundOutcome.FINE);
    assertThat(runs[0]).isEqualTo(RevisionSteps.MOST_FAULTS);
    assertThat(stages()).containsExactly(Stage.GIVEN_UP);
    assertThat(store.watches().revisions(OFFICE, school.id()).get(0).problem())
        .hasValueSatisfying(p -> assertThat(p).contains("NoClassDefFoundError"));
    assertThat(told).filteredOn(l -> l.startsWith("event=given-up")).singleElement().asString().contains("revision=1",
        "NoClassDefFoundError");
    assertThat(titles(r)).as("its owner can do nothing about it").isEmpty();
    run = this::takeoff;
    checkIn("two");
    assertThat(round()).isEqualTo(RoundOutcome.FINE);
    assertThat(stages()).containsExactly(Stage.GIVEN_UP, Stage.ANSWERED);
  }

  @Test
  void anAnswerThatCantBeLeftForAFaultOfTheProgramIsGivenUpToo() throws InterruptedException {
    checkIn("one");
    List<String> calls = new ArrayList<>();
    shelf.before = call -> {
      calls.add(call);
      if (call.equals("attach")) {
        throw missingClass();
      }
    };
    for (int i = 1; i <= RevisionSteps.MOST_FAULTS; i++) {
      assertThatThrownBy(this::round).isInstanceOf(NoClassDefFoundError.class);
    }
    assertThat(round()).isEqualTo(RoundOutcome.FINE);
    assertThat(calls).filteredOn("attach"::equals).hasSize(RevisionSteps.MOST_FAULTS);
    assertThat(analysed).as("the analysis was good").containsExactly("one");
    assertThat(stages()).containsExactly(Stage.GIVEN_UP);
  }

  @Test
  void aFaultAtOneProjectDoesNotHoldTheOthersUp() {
    checkIn("fails");
    ServedProject barn = shelf.addProject("Wharf");
    ServedRevision inBarn = shelf.checkIn(barn, "", "wharf".getBytes(StandardCharsets.UTF_8));
    run = (inputs, progress) -> {
      Takeoff takeoff = takeoff(inputs, progress);
      if (analysed.get(analysed.size() - 1).equals("fails")) {
        throw new StackOverflowError();
      }
      return takeoff;
    };
    assertThatThrownBy(this::round).isInstanceOf(StackOverflowError.class);
    assertThat(titles(inBarn)).hasSize(2);
  }

  @Test
  void faultsOfTheProgramAreTriedAgainEverMoreRarelyShownAndForgottenWhenItWorks() {
    List<Duration> pauses = new ArrayList<>();
    List<String> states = new ArrayList<>();
    int[] rounds = {0};
    ListAppender<ILoggingEvent> log = listen();
    new Rounds(OFFICE, () -> {
      if (rounds[0]++ < 3) {
        throw missingClass();
      }
      return RoundOutcome.FINE;
    }, new Backoff(Duration.ofSeconds(10), Duration.ofSeconds(100), new Random(5)), pause -> {
      pauses.add(pause);
      states.add(health.faults().toString());
      if (pauses.size() == 4) {
        throw new InterruptedException();
      }
    }, setting((s, p) -> true, Duration.ofMinutes(1))).run();
    assertThat(pauses.get(0)).isBetween(Duration.ofSeconds(16), Duration.ofSeconds(20));
    assertThat(pauses.get(1)).isBetween(Duration.ofSeconds(32), Duration.ofSeconds(40));
    assertThat(pauses.get(3)).isBetween(Duration.ofSeconds(8), Duration.ofSeconds(10));
    assertThat(states).startsWith("[Fault[part=watch office, since=2026-03-02T08:00:00Z, times=1, stopped=false]]",
        "[Fault[part=watch office, since=2026-03-02T08:00:00Z, times=2, stopped=false]]").endsWith("[]");
    assertThat(log.list).filteredOn(e -> e.getLevel() == Level.ERROR).as("each once, with its trace").hasSize(3)
        .allSatisfy(e -> assertThat(e.getThrowableProxy().getClassName()).isEqualTo(NoClassDefFoundError.class.getName()));
  }

  private static ListAppender<ILoggingEvent> listen() {
    ListAppender<ILoggingEvent> log = new ListAppender<>();
    log.start();
    ((Logger) LoggerFactory.getLogger(Health.class)).addAppender(log);
    return log;
  }

  @Test
  void aJournalThatFailsDoesNotEndTheWatch() {
    int[] rounds = {0};
    Watching.Setting broken = new Watching.Setting(servers, (s, p) -> true, store, download(), Duration.ofMinutes(1), a -> {}, e -> {
      throw missingClass();
    }, CLOCK, health);
    new Rounds(OFFICE, () -> RoundOutcome.TROUBLE, new Backoff(Duration.ofSeconds(10), Duration.ofSeconds(100), new Random(5)), pause -> {
      if (++rounds[0] == 3) {
        throw new InterruptedException();
      }
    }, broken).run();
    assertThat(rounds[0]).isEqualTo(3);
    assertThat(health.faults()).extracting(Health.Fault::part).containsExactly("journal");
  }

  @Test
  void aThreadThatEndsByItselfIsToldAndShown() throws InterruptedException {
    checkIn("one");
    try (Watching watching = new Watching(setting((s, p) -> true, Duration.ofHours(1)))) {
      watching.start(List.of(OFFICE));
      await(() -> stages().contains(Stage.ANSWERED));
      Thread.getAllStackTraces().keySet().stream().filter(t -> t.getName().equals("watch-office")).forEach(Thread::interrupt);
      assertThat(watching.awaitEnd()).isEqualTo(OFFICE);
      await(() -> !health.faults().isEmpty());
      assertThat(health.faults()).singleElement().satisfies(f -> assertThat(f.part() + f.stopped()).isEqualTo("watch officetrue"));
    }
  }

  @Test
  void aWatchThatIsClosedIsNoFault() throws InterruptedException {
    checkIn("one");
    try (Watching watching = new Watching(setting((s, p) -> true, Duration.ofHours(1)))) {
      watching.start(List.of(OFFICE));
      await(() -> stages().contains(Stage.ANSWERED));
    }
    assertThat(health.faults()).isEmpty();
  }

  @Test
  void aTimersTaskThatFailsIsShownAndRunsAgain() {
    int[] runs = {0};
    Runnable task = health.guarded("clock", () -> {
      if (runs[0]++ == 0) {
        throw missingClass();
      }
    });
    task.run();
    assertThat(health.faults()).extracting(Health.Fault::part).containsExactly("clock");
    task.run();
    assertThat(health.faults()).isEmpty();
  }

  @Test
  void aServerThatAnswersAgainIsToldOnceAlsoByAnotherProcess() throws InterruptedException {
    checkIn("one");
    round();
    assertThat(told).noneMatch(l -> l.startsWith("event=reachable"));
    shelf.before = failing("connect", Reason.UNREACHABLE, 2);
    assertThat(round()).isEqualTo(RoundOutcome.PASSING);
    restart();
    assertThat(round()).isEqualTo(RoundOutcome.PASSING);
    assertThat(told).noneMatch(l -> l.startsWith("event=reachable"));
    restart();
    round();
    round();
    assertThat(told).filteredOn(l -> l.startsWith("event=reachable"))
        .containsExactly("event=reachable server=office detail=\"it answers again\"");
  }

  @Test
  void eventsCarryTheTimeOfWhoWatches() {
    Event event = new Event(CLOCK.instant(), "found", OFFICE, "a\n\"b\"", 3, "");
    assertThat(event.at()).isEqualTo("2026-03-02T08:00:00Z");
    assertThat(event.line()).isEqualTo("event=found server=office project=\"a \\\"b\\\"\" revision=3");
    assertThat(event.fields()).containsExactly(entry("event", "found"), entry("server", OFFICE), entry("project", "a \"b\""),
        entry("revision", 3));
  }

  private static void await(BooleanSupplier condition) throws InterruptedException {
    for (int i = 0; i < 600 && !condition.getAsBoolean(); i++) {
      Thread.sleep(50);
    }
    assertThat(condition.getAsBoolean()).isTrue();
  }
}
