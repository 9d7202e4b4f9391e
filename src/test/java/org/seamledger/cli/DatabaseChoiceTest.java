package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.seamledger.takeoff.Analysis;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code serve} says about its database before it starts; a server that runs is tested elsewhere. */
class DatabaseChoiceTest {

  private static final String SECRET = "four-words-nobody-guesses";
  private static final String NOBODY = "jdbc:postgresql://127.0.0.1:1/roofs";

  @TempDir
  private Path folder;
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int serve(Map<String, String> variables, String... words) {
    List<String> all = new ArrayList<>(List.of("serve", "--port", "0", "--data", folder.resolve("data").toString()));
    all.addAll(List.of(words));
    if (!all.contains("--database-wait")) {
      all.addAll(List.of("--database-wait", "0"));
    }
    Environment environment = new Environment(Optional.empty(), Optional.empty(), Optional.empty(), variables, true);
    return new Cli(Analysis::run, environment).run(all.toArray(String[]::new), new ByteArrayOutputStream(),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private Path passwordFile(String permissions) throws IOException {
    Path file = Files.writeString(folder.resolve("password"), SECRET + "\n");
    return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(permissions));
  }

  @Test
  void aPasswordDoesNotBelongOnTheCommandLine() {
    assertThat(serve(Map.of(), "--database", NOBODY + "?password=" + SECRET)).isEqualTo(2);
    assertThat(err()).contains("SEAMLEDGER_DATABASE_PASSWORD", "--database-password-file").doesNotContain(SECRET).hasLineCount(1);
  }

  @Test
  void aDatabaseThatIsNotThereIsSaidInOneLine() throws IOException {
    assertThat(serve(Map.of(), "--database", NOBODY, "--database-password-file", passwordFile("rw-------").toString())).isEqualTo(2);
    assertThat(err()).isEqualTo("seamledger: The database " + NOBODY
        + " cannot be reached: the connection is refused; start PostgreSQL there, or correct host and port." + System.lineSeparator());
  }

  @Test
  void theEnvironmentNamesItToo() {
    assertThat(serve(Map.of("SEAMLEDGER_DATABASE", NOBODY + "?password=" + SECRET, "SEAMLEDGER_DATABASE_USER", "ida"))).isEqualTo(2);
    assertThat(err()).startsWith("seamledger: The database " + NOBODY + " cannot be reached: ").doesNotContain(SECRET);
  }

  @Test
  void aPasswordFileMustBeItsOwnersAlone() throws IOException {
    assertThat(serve(Map.of(), "--database", NOBODY, "--database-password-file", passwordFile("rw-r-----").toString())).isEqualTo(2);
    assertThat(err()).contains("is open to others", "chmod 600").doesNotContain(SECRET).hasLineCount(1);
  }

  @Test
  void whatIsMissingOrWrongIsNamed() {
    assertThat(serve(Map.of(), "--database-password-file", "x")).isEqualTo(2);
    assertThat(err()).contains("--database-password-file needs --database");
    err.reset();
    assertThat(serve(Map.of("SEAMLEDGER_DATABASE_PASSWORD_FILE", folder.resolve("none").toString()), "--database", NOBODY)).isEqualTo(2);
    assertThat(err()).contains("can't be read");
    err.reset();
    assertThat(serve(Map.of(), "--database", "sqlite:roofs.db")).isEqualTo(2);
    assertThat(err()).contains("a URL that begins with jdbc:postgresql:");
    err.reset();
    assertThat(serve(Map.of(), "--database", NOBODY, "--database-wait", "-1")).isEqualTo(2);
    assertThat(err()).contains("--database-wait takes a number of seconds, 0 or more");
  }
}
