package org.seamledger.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.time.Duration;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.seamledger.ledger.PostgresAddress;
import picocli.CommandLine.Option;

/** Which database to use, and how to get in without saying so on the command line, which everybody on the machine can read. */
final class DatabaseChoice {

  static final String VARIABLE = "SEAMLEDGER_DATABASE";
  private static final Set<PosixFilePermission> OTHERS = EnumSet.of(PosixFilePermission.GROUP_READ, PosixFilePermission.GROUP_WRITE,
      PosixFilePermission.OTHERS_READ, PosixFilePermission.OTHERS_WRITE);

  @Option(names = "--database", paramLabel = "URL",
      description = "PostgreSQL database for analyses and reviews, jdbc:postgresql://HOST/NAME, instead of"
          + " a file in --data; also SEAMLEDGER_DATABASE. Uploads stay in --data.")
  private String url;

  @Option(names = "--database-password-file", paramLabel = "FILE",
      description = "File that holds the password and that nobody else may read; also SEAMLEDGER_DATABASE_PASSWORD_FILE.")
  private Path passwordFile;

  @Option(names = "--database-wait", paramLabel = "SECONDS", defaultValue = "600",
      description = "How long a start waits for a database that isn't up yet; 0 for not at all (default: 600).")
  private long wait;

  /** @param variables those of the environment that begin with {@link #VARIABLE} */
  Optional<PostgresAddress> resolve(Map<String, String> variables) {
    if (url != null && PostgresAddress.holdsPassword(url)) {
      throw new UsageException("a password on the command line can be read by everybody on this machine; put it into the environment as "
          + VARIABLE + "_PASSWORD, or into a file named by --database-password-file");
    }
    Optional<String> where = Optional.ofNullable(url).or(() -> Optional.ofNullable(variables.get(VARIABLE)));
    if (where.isEmpty() && passwordFile != null) {
      throw new UsageException("--database-password-file needs --database");
    }
    if (wait < 0) {
      throw new UsageException("--database-wait takes a number of seconds, 0 or more");
    }
    try {
      return where.map(w -> PostgresAddress.of(w.strip(), Optional.ofNullable(variables.get(VARIABLE + "_USER")), password(variables))
          .patience(Duration.ofSeconds(wait)));
    } catch (IllegalArgumentException e) {
      throw new UsageException("--database: " + e.getMessage());
    }
  }

  private Optional<String> password(Map<String, String> variables) {
    Optional<Path> file =
        Optional.ofNullable(passwordFile).or(() -> Optional.ofNullable(variables.get(VARIABLE + "_PASSWORD_FILE")).map(Path::of));
    return file.isPresent() ? Optional.of(read(file.get())) : Optional.ofNullable(variables.get(VARIABLE + "_PASSWORD"));
  }

  private static String read(Path file) {
    try {
      PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
      if (view != null && view.readAttributes().permissions().stream().anyMatch(OTHERS::contains)) {
        throw new UsageException("the password file " + file + " is open to others; make it yours alone: chmod 600 " + file);
      }
      return Files.readString(file, StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      throw new UsageException("the password file " + file + " can't be read");
    }
  }
}
