package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.takeoff.Analysis;

/** What {@code work} and {@code serve --models} say before they start; workers that run are tested elsewhere. */
class WorkCommandTest {

  @TempDir
  private Path folder;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String line) {
    return new Cli(Analysis::run, Environment.PLAIN).run(line.replace("DIR", folder.toString()).split(" "), out,
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "work --models DIR | servers and workers need a PostgreSQL database in common: --database jdbc:postgresql://HOST/NAME",
      "serve --models DIR | servers and workers need a PostgreSQL database in common: --database jdbc:postgresql://HOST/NAME",
      "work --database jdbc:postgresql://127.0.0.1:1/roofs | name the folder of models that serve and the workers share: --models DIR",
      "serve --database jdbc:postgresql://127.0.0.1:1/roofs --models DIR --data DIR | --models takes the place of --data",
      "work --threads 0 --models DIR | --threads, --analysis-seconds, --per-project and --keep-hours take a whole number, at least 1",
      "work --database jdbc:postgresql://127.0.0.1:1/roofs --models DIR --database-wait 0 | cannot be reached: the connection is refused"})
  void whatIsMissingIsSaidInOneLine(String line, String said) {
    int status = run(line);
    assertThat(status).as(err.toString(StandardCharsets.UTF_8)).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8)).contains(said.replace("DIR --data", folder.toString())).hasLineCount(1);
  }

  @Test
  void helpNamesItsOptions() {
    int status = run("work --help");
    assertThat(status).as(err.toString(StandardCharsets.UTF_8)).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8)).contains("--database=URL", "--models=DIR", "--threads=N", "--analysis-seconds=N",
        "--per-project=N", "--keep-hours=N", "--servers=FILE", "--shapes=DIR", "--log=FORM");
  }
}
