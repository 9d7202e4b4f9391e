package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.seamledger.run.Analyzer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.junction.Junction;
import org.seamledger.shacl.BrokenRulesException;
import org.seamledger.source.ModelFile;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;
import org.seamledger.takeoff.UnusableFileException;

class CliTest {

  @TempDir
  private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final List<Inputs> asked = new ArrayList<>();

  private int run(Analyzer<Takeoff> work, String... words) {
    return new Cli(work, Environment.PLAIN).run(words, out, new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private int run(String... words) {
    return run((inputs, progress) -> {
      asked.add(inputs);
      return Takeoffs.boatHouse();
    }, words);
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  @Test
  void withoutAFormPeopleGetText() {
    assertThat(run("analyze", "boat-house.ifc")).isZero();
    assertThat(out()).startsWith("seamledger 1.2.3: junctions of a standing-seam metal roof\n");
    assertThat(err()).isEmpty();
  }

  @Test
  void jsonIsOneDocumentAndNothingMore() {
    assertThat(run("analyze", "a.ifc", "--format", "json")).isZero();
    assertThat(out()).startsWith("{").endsWith("}\n");
    assertThat(err()).isEmpty();
  }

  @Test
  void csvIsRows() {
    assertThat(run("analyze", "--format=csv", "a.ifc")).isZero();
    assertThat(out()).startsWith("id,kind,");
  }

  @Test
  void severalModelsAreOneBuilding() {
    run("analyze", "plans/roof.ifc", "pipes.ifc.gz", "--system", "office.json", "--shapes", "rules");
    Inputs inputs = asked.get(0);
    assertThat(inputs.models()).containsExactly(new ModelFile(Path.of("plans/roof.ifc")), new ModelFile(Path.of("pipes.ifc.gz")));
    assertThat(inputs.system().map(Inputs.NamedFile::path)).contains(Path.of("office.json"));
    assertThat(inputs.shapes()).contains(Path.of("rules"));
  }

  @Test
  void theWorstFindingIsAWarning() {
    assertThat(run("analyze", "a.ifc")).isZero();
    assertThat(run("analyze", "a.ifc", "--fail-on", "violation")).isZero();
    assertThat(run("analyze", "a.ifc", "--fail-on", "warning")).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "analyse a.ifc", "analyze", "analyze a.ifc --format yaml", "analyze a.ifc --fail-on info",
      "analyze a.ifc --colour", "analyze a.ifc --format", "explain a.ifc", "section a.ifc", "plan",
      "analyze a.ifc --output /no/such/folder/x.json",
      "watch office", "watch office --servers /no/such/list", "serve --watch", "watch --every 0", "watch --every soon"})
  void aWrongCommandLineIsOneLineAndTwo(String words) {
    assertThat(run(words.isEmpty() ? new String[0] : words.split(" "))).isEqualTo(2);
    assertThat(err()).startsWith("seamledger: ").hasLineCount(1);
    assertThat(out()).isEmpty();
    assertThat(asked).isEmpty();
  }

  @Test
  void aModelThatCannotBeReadIsOneLineAndThree() {
    int status = run((inputs, progress) -> {
      throw new UnreadableModelException("a.ifc", 3, 7, "a keyword", "a bracket\nand more");
    }, "analyze", "a.ifc", "--format", "json");
    assertThat(status).isEqualTo(3);
    assertThat(err()).isEqualTo("seamledger: a.ifc:3:7: expected a keyword, found a bracket and more\n");
    assertThat(out()).isEmpty();
  }

  @Test
  void brokenShapesAreOneLineWithFileAndLineAndTwo() {
    int status = run((inputs, progress) -> {
      throw new UnusableFileException(new BrokenRulesException("rules/kinds.ttl", 12, 3, "a second shape claims sl:kind ridge"));
    }, "analyze", "a.ifc", "--shapes", "rules");
    assertThat(status).isEqualTo(2);
    assertThat(err()).isEqualTo("seamledger: rules/kinds.ttl:12:3: a second shape claims sl:kind ridge\n");
  }

  @Test
  void theLaunchersShapesGiveWayToTheCommandLines() {
    Environment launched = new Environment(Optional.of(Path.of("program/shapes")), Optional.empty(), Optional.empty(), Map.of(), false);
    for (String[] words : List.of(new String[] {"analyze", "a.ifc"}, new String[] {"analyze", "a.ifc", "--shapes", "own"})) {
      new Cli((inputs, progress) -> {
        asked.add(inputs);
        return Takeoffs.boatHouse();
      }, launched).run(words, out, new PrintStream(err, true, StandardCharsets.UTF_8));
    }
    assertThat(asked).extracting(Inputs::shapes).containsExactly(Optional.of(Path.of("program/shapes")), Optional.of(Path.of("own")));
  }

  @Test
  void aFaultOfTheProgramShowsItsTraceToWhoAsks() {
    Analyzer<Takeoff> faulty = (inputs, progress) -> {
      throw new IllegalStateException("two\nlines");
    };
    assertThat(run(faulty, "analyze", "a.ifc")).isEqualTo(70);
    assertThat(err()).hasLineCount(1).contains("internal fault").contains("SEAMLEDGER_TRACE=1");
    err.reset();
    new Cli(faulty, new Environment(Optional.empty(), Optional.empty(), Optional.empty(), Map.of(), true))
        .run(new String[] {"analyze", "a.ifc"}, out, new PrintStream(err, true, StandardCharsets.UTF_8));
    assertThat(err()).contains("\tat org.seamledger.cli.CliTest");
  }

  @ParameterizedTest
  @ValueSource(classes = {NoClassDefFoundError.class, ExceptionInInitializerError.class, StackOverflowError.class,
      UnsupportedClassVersionError.class,
      AssertionError.class, NullPointerException.class})
  void whateverIsThrownIsOneLineAndSeventy(Class<? extends Throwable> type) {
    assertThat(run((inputs, progress) -> {
      throw CliTest.<RuntimeException>sneaky(type);
    }, "analyze", "a.ifc")).isEqualTo(70);
    assertThat(err()).hasLineCount(1).startsWith("seamledger: internal fault: " + type.getName());
    assertThat(out()).isEmpty();
  }

  @SuppressWarnings("unchecked")
  private static <T extends Throwable> T sneaky(Class<? extends Throwable> type) throws T {
    try {
      throw (T) type.getDeclaredConstructor().newInstance();
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void tooLittleMemorySaysHowToGiveMore() {
    assertThat(run((inputs, progress) -> {
      throw new OutOfMemoryError();
    }, "analyze", "a.ifc")).isEqualTo(3);
    assertThat(err()).contains("SEAMLEDGER_JAVA_OPTS=-Xmx").hasLineCount(1);
  }

  @Test
  void aReaderThatHasSeenEnoughIsNoError() {
    OutputStream closed = new OutputStream() {
      @Override
      public void write(int b) throws IOException {
        throw new IOException("Broken pipe");
      }
    };
    int status =
        new Cli((inputs, progress) -> Takeoffs.boatHouse(), Environment.PLAIN).run(new String[] {"analyze", "a.ifc"}, closed,
            new PrintStream(err, true, StandardCharsets.UTF_8));
    assertThat(status).isZero();
    assertThat(err()).isEmpty();
  }

  @Test
  void aFullDiskIsAnError() {
    OutputStream full = new OutputStream() {
      @Override
      public void write(int b) throws IOException {
        throw new IOException("No space left on device");
      }
    };
    int status =
        new Cli((inputs, progress) -> Takeoffs.boatHouse(), Environment.PLAIN).run(new String[] {"analyze", "a.ifc"}, full,
            new PrintStream(err, true, StandardCharsets.UTF_8));
    assertThat(status).isEqualTo(74);
    assertThat(err()).contains("No space left on device").hasLineCount(1);
  }

  @Test
  void theResultGoesIntoAFileWhole() throws IOException {
    Path file = folder.resolve("ledger.json");
    Files.writeString(file, "old");
    assertThat(run("analyze", "a.ifc", "--format", "json", "--output", file.toString())).isZero();
    assertThat(Files.readString(file)).startsWith("{").endsWith("}\n");
    assertThat(out()).isEmpty();
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(file);
    }
  }

  @Test
  void aFailedAnalysisLeavesTheOldFile() throws IOException {
    Path file = folder.resolve("ledger.json");
    Files.writeString(file, "old");
    run((inputs, progress) -> {
      throw new UnreadableModelException("a.ifc", 1, 1, "ISO-10303-21;", "an empty file");
    }, "analyze", "a.ifc", "--output", file.toString());
    assertThat(file).hasContent("old");
  }

  @Test
  void explainsOneJunctionByTheBeginningOfItsId() {
    assertThat(run("explain", "a.ifc", "b.ifc", "rak")).isZero();
    assertThat(out()).startsWith("rake1, unclassified: no shape").contains("The nearest shape that it misses is flat-edge:");
    assertThat(asked.get(0).models()).hasSize(2);
  }

  @Test
  void drawsThePlanAndASectionByTheBeginningOfAnId() throws IOException {
    assertThat(run("plan", "a.ifc", "b.ifc")).isZero();
    assertThat(out()).startsWith("<svg ").endsWith("</svg>\n").contains("boat-house.ifc");
    assertThat(asked.get(0).models()).hasSize(2);
    Path file = folder.resolve("ridge.svg");
    assertThat(run("section", "a.ifc", "rid", "--output", file.toString())).isZero();
    assertThat(Files.readString(file)).startsWith("<svg ").contains("Junction ridge1");
    assertThat(run("section", "a.ifc", "nope")).isEqualTo(2);
    assertThat(err()).contains("no junction's id begins with nope").hasLineCount(1);
  }

  @Test
  void anUnknownJunctionIsAWrongCommandLine() {
    assertThat(run("explain", "a.ifc", "nope")).isEqualTo(2);
    assertThat(err()).contains("no junction's id begins with nope").hasLineCount(1);
  }

  @Test
  void versionAndHelp() {
    assertThat(run("--version")).isZero();
    assertThat(out()).matches("seamledger \\d+\\.\\d+\\.\\d+\\n");
    out.reset();
    assertThat(run("--help")).isZero();
    assertThat(out()).contains("analyze").contains("explain");
    out.reset();
    assertThat(run("analyze", "--help")).isZero();
    assertThat(out()).contains("--fail-on").contains("--shapes").contains("Exit status");
    assertThat(out().lines()).allMatch(line -> line.length() <= 100);
  }

  @Test
  void aQuickAnalysisIsQuietAndASlowOneSaysWhatItDoes() {
    run((inputs, progress) -> {
      progress.at("reading the models", 0);
      sleep(1300);
      progress.at("finding the roof's faces", 0.25);
      progress.at("finding the roof's faces", 0.6);
      return Takeoffs.boatHouse();
    }, "analyze", "a.ifc", "--format", "json");
    assertThat(err()).isEqualTo("seamledger: reading the models …\nseamledger: finding the roof's faces …\n");
    assertThat(out()).startsWith("{");
  }

  private static void sleep(long ms) {
    try {
      Thread.sleep(ms);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
