package org.seamledger.portfolio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.run.Analyzer;
import org.seamledger.run.FailureException;
import org.seamledger.shacl.BrokenRulesException;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;
import org.seamledger.takeoff.UnusableFileException;

/** What becomes of models that fail, and which are analysed again. */
class PortfolioRunTest {

  private static final long PLENTY = 4L << 30;

  @TempDir
  private Path folder;

  private final List<PortfolioModel> models = new ArrayList<>();
  private final ConcurrentLinkedQueue<String> analysed = new ConcurrentLinkedQueue<>();

  @BeforeEach
  void write() throws IOException {
    for (String name : new String[] {"a.ifc", "b.ifc", "c.ifc"}) {
      Files.writeString(folder.resolve(name), "model " + name);
      models.add(new PortfolioModel(folder.resolve(name), name));
    }
  }

  /** Every model is the boat house, but for those whose name the test says otherwise of. */
  private Analyzer<Takeoff> analyzer(Analyzer<Takeoff> otherwise) {
    return (inputs, progress) -> {
      analysed.add(inputs.models().get(0).name());
      Takeoff other = otherwise.analyze(inputs, progress);
      return other == null ? Takeoffs.boatHouse() : other;
    };
  }

  private int run(Analyzer<Takeoff> otherwise, String basis, boolean again, Duration longest) throws IOException, InterruptedException {
    analysed.clear();
    try (EntryStore store = EntryStore.open(folder.resolve("out"))) {
      ModelRun runner = new ModelRun(analyzer(otherwise), Optional.empty(), Optional.empty(), basis, longest);
      return new PortfolioRun(runner, store, again, 2, PLENTY, text -> {}).run(models);
    }
  }

  private int run(Analyzer<Takeoff> otherwise) throws IOException, InterruptedException {
    return run(otherwise, "1", false, Duration.ofMinutes(5));
  }

  private ModelEntry entry(String name) throws IOException {
    try (EntryStore store = EntryStore.open(folder.resolve("out"))) {
      return store.get(name).orElseThrow();
    }
  }

  @Test
  void secondRunTakesOnlyWhatChanged() throws Exception {
    assertThat(run((i, p) -> null)).isZero();
    assertThat(analysed).containsExactlyInAnyOrder("a.ifc", "b.ifc", "c.ifc");
    assertThat(run((i, p) -> null)).isEqualTo(3);
    assertThat(analysed).isEmpty();
    Files.writeString(folder.resolve("b.ifc"), "another model");
    assertThat(run((i, p) -> null)).isEqualTo(2);
    assertThat(analysed).containsExactly("b.ifc");
    assertThat(run((i, p) -> null, "2", false, Duration.ofMinutes(5))).as("other rules").isZero();
  }

  @Test
  void brokenModelIsAnEntryWithItsMessageAndIsNotReadAgain() throws Exception {
    Analyzer<Takeoff> broken = (i, p) -> {
      if (i.models().get(0).name().equals("b.ifc")) {
        throw new UnreadableModelException("b.ifc", 7, 3, "a semicolon", "the end of the file");
      }
      return null;
    };
    run(broken);
    assertThat(entry("b.ifc").state()).isEqualTo(ModelState.UNREADABLE);
    assertThat(entry("b.ifc").reason()).isEqualTo("b.ifc:7:3: expected a semicolon, found the end of the file");
    assertThat(entry("c.ifc").state()).isEqualTo(ModelState.DONE);
    assertThat(run(broken)).isEqualTo(3);
    assertThat(run((i, p) -> null, "1", true, Duration.ofMinutes(5))).as("once more on request").isEqualTo(2);
    assertThat(entry("b.ifc").state()).isEqualTo(ModelState.DONE);
  }

  @Test
  void modelThatTakesTooLongIsStoppedAndTakenAgainNextTime() throws Exception {
    Analyzer<Takeoff> slow = (i, p) -> {
      while (i.models().get(0).name().equals("a.ifc")) {
        p.at(0.5);
        Thread.onSpinWait();
      }
      return null;
    };
    models.removeIf(m -> !m.name().equals("a.ifc"));
    run(slow, "1", false, Duration.ofSeconds(1));
    assertThat(entry("a.ifc").state()).isEqualTo(ModelState.TOO_LONG);
    assertThat(entry("a.ifc").reason()).startsWith("stopped after 1 s");
    assertThat(run((i, p) -> null)).isZero();
    assertThat(entry("a.ifc").state()).isEqualTo(ModelState.DONE);
  }

  @Test
  void modelThatRanOutOfMemoryBesideOthersIsTakenByItself() throws Exception {
    AtomicInteger running = new AtomicInteger();
    ConcurrentHashMap<String, Integer> beside = new ConcurrentHashMap<>();
    AtomicInteger attempts = new AtomicInteger();
    run((i, p) -> {
      String name = i.models().get(0).name();
      try {
        beside.put(name, running.incrementAndGet());
        if (name.equals("a.ifc") && attempts.incrementAndGet() == 1) {
          throw new OutOfMemoryError("as a test");
        }
        return null;
      } finally {
        running.decrementAndGet();
      }
    });
    assertThat(entry("a.ifc").state()).isEqualTo(ModelState.DONE);
    assertThat(attempts).hasValue(2);
    assertThat(beside.get("a.ifc")).isEqualTo(1);
  }

  @Test
  void modelTooLargeEvenByItselfSaysSo() throws Exception {
    run((i, p) -> {
      if (i.models().get(0).name().equals("c.ifc")) {
        throw new OutOfMemoryError("as a test");
      }
      return null;
    });
    assertThat(entry("c.ifc").state().word()).isEqualTo("too-large");
    assertThat(entry("c.ifc").reason()).contains("MiB");
  }

  /** A process that dies leaves its marks: two deaths, and the model is given up; the others are not. */
  @Test
  void modelAtWhichTheProcessDiedTwiceIsGivenUp() throws Exception {
    Path mark = folder.resolve("out/entries/begun").resolve(EntryStore.key("b.ifc"));
    Files.createDirectories(mark.getParent());
    Files.writeString(mark, "1");
    run((i, p) -> null);
    assertThat(entry("b.ifc").state()).as("one death may be chance").isEqualTo(ModelState.DONE);
    assertThat(analysed.stream().reduce((x, y) -> y)).as("by itself, after the others").contains("b.ifc");
    Files.writeString(mark, "2");
    Files.writeString(folder.resolve("b.ifc"), "another model");
    run((i, p) -> null);
    assertThat(analysed).isEmpty();
    assertThat(entry("b.ifc").state().word()).isEqualTo("gave-up");
    assertThat(run((i, p) -> null, "1", true, Duration.ofMinutes(5))).isEqualTo(2);
    assertThat(entry("b.ifc").state()).isEqualTo(ModelState.DONE);
  }

  @Test
  void endInGoodOrderIsNoDeath() throws Exception {
    EntryStore store = EntryStore.open(folder.resolve("out"));
    store.begin("a.ifc");
    store.close();
    try (EntryStore next = EntryStore.open(folder.resolve("out"))) {
      assertThat(next.deaths("a.ifc")).isZero();
    }
  }

  @Test
  void rulesThatCannotBeUsedEndTheRun() {
    assertThatThrownBy(() -> run((i, p) -> {
      throw new UnusableFileException(new BrokenRulesException("kinds.ttl", 3, 1, "no shape"));
    })).isInstanceOf(FailureException.class).hasMessageContaining("kinds.ttl");
  }

  @Test
  void oneRunAtATimeUsesAFolder() throws Exception {
    try (EntryStore store = EntryStore.open(folder.resolve("out"))) {
      assertThatThrownBy(() -> EntryStore.open(folder.resolve("out"))).isInstanceOf(IOException.class).hasMessageContaining("another run");
      assertThat(store.get("a.ifc")).isEmpty();
    }
  }

  @Test
  void entryThatIsDamagedIsMadeAgain() throws Exception {
    run((i, p) -> null);
    String key = EntryStore.key("a.ifc");
    Path file = folder.resolve("out/entries").resolve(key.substring(0, 2)).resolve(key + ".json.gz");
    byte[] whole = Files.readAllBytes(file);
    Files.write(file, java.util.Arrays.copyOf(whole, whole.length / 2));
    assertThat(run((i, p) -> null)).isEqualTo(2);
    assertThat(Files.readAllBytes(file)).isEqualTo(whole);
  }
}
