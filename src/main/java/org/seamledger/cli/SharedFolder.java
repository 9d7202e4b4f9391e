package org.seamledger.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.seamledger.ledger.PostgresAddress;
import picocli.CommandLine.Option;

/** The folder of models that servers and workers have in common. */
final class SharedFolder {

  @Option(names = "--models", paramLabel = "DIR",
      description = "Folder of models that servers and workers on this database share, wherever each machine has it mounted.")
  private Path models;

  Optional<Path> folder() {
    return Optional.ofNullable(models);
  }

  /** @throws UsageException where there is none: an embedded one can't be shared */
  static PostgresAddress requireDatabase(Optional<PostgresAddress> database) {
    return database.orElseThrow(
        () -> new UsageException("servers and workers need a PostgreSQL database in common: --database jdbc:postgresql://HOST/NAME"));
  }
}
