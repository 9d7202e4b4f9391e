package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.bcf.BcfFile;
import org.seamledger.bcf.BcfReader;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

/** Findings that go out as topics, and what comes back. */
class TopicsCommandTest {

  private static final Takeoff ACCEPTED =
      Takeoffs.boatHouse("Roof of the boat house", List.of(new AcceptedFinding("kind/unclassified", "rake1",
          List.of("0roof"), 1, new Acceptance("A. Roofer", "2024-05-31", "measured on site"))));

  @TempDir
  private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(Takeoff takeoff, Object... words) {
    out.reset();
    err.reset();
    return new Cli((inputs, progress) -> takeoff, Environment.PLAIN).run(java.util.Arrays.stream(words).map(Object::toString)
        .toArray(String[]::new), out, new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  @Test
  void toAFileOrOn() throws Exception {
    Path file = folder.resolve("findings.bcf");
    assertThat(run(ACCEPTED, "analyze", "a.ifc", "--format", "bcf", "--output", file)).isZero();
    assertThat(run(ACCEPTED, "analyze", "a.ifc", "--format", "bcf")).isZero();
    assertThat(out.toByteArray()).isEqualTo(Files.readAllBytes(file));
    BcfFile bcf = BcfReader.read(file, "findings.bcf");
    assertThat(bcf.version()).isEqualTo("3.0");
    assertThat(bcf.topics()).hasSize(3);
    run(ACCEPTED, "analyze", "a.ifc", "--format", "bcf-2.1", "--author", "B", "--created", "2024-06-30", "--output", file);
    assertThat(BcfReader.read(file, "findings.bcf").version()).isEqualTo("2.1");
    assertThat(BcfReader.read(file, "findings.bcf").topics()).anySatisfy(t -> assertThat(t.when()).isEqualTo("2024-06-30T00:00:00Z"));
  }

  @Test
  void answersAreInEveryOutput() {
    Path file = folder.resolve("findings.bcf");
    run(ACCEPTED, "analyze", "a.ifc", "--format", "bcf", "--output", file);
    run(ACCEPTED, "analyze", "a.ifc", "--format", "json");
    String accepted = out.toString(StandardCharsets.UTF_8).replace("\"2024-05-31\"", "\"2024-05-31T00:00:00Z\"");
    assertThat(run(Takeoffs.boatHouse(), "analyze", "a.ifc", "--format", "json", "--reviews", file)).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo(accepted).contains("measured on site");
    assertThat(run(Takeoffs.boatHouse(), "analyze", "a.ifc", "--fail-on", "warning")).isEqualTo(1);
  }

  @Test
  void whatIsWrongIsSaidBeforeTheWork() throws Exception {
    Path none = Files.writeString(folder.resolve("none.bcf"), "nothing");
    assertThat(run(null, "analyze", "a.ifc", "--reviews", none)).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8)).contains("none.bcf: expected a BCF file, which is a ZIP archive").hasLineCount(1);
    assertThat(run(null, "analyze", "a.ifc", "--format", "bcf", "--created", "soon")).isEqualTo(2);
    assertThat(run(null, "analyze", "a.ifc", "--format", "bcf", "--author", " ")).isEqualTo(2);
    assertThat(run(null, "analyze", "a.ifc", "--each", "--reviews", none)).isEqualTo(2);
    assertThat(run(null, "analyze", "a.ifc", "--each", "--format", "bcf-2.1")).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8)).contains("not bcf-2.1").hasLineCount(1);
  }
}
