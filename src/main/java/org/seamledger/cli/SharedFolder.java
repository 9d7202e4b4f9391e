package org.seamledger.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.seamledger.ledger.ModelPlace;
import org.seamledger.ledger.PostgresAddress;
import picocli.CommandLine.Option;

/** The models that servers and workers have in common. */
final class SharedFolder {

  @Option(names = "--models", paramLabel = "DIR",
      description = "Folder of models that servers and workers on this database share, wherever each machine has it mounted.")
  private Path models;

  @Option(names = "--models-in-database",
      description = "Where no disk is shared: models are kept in the database, and --data is a folder for this machine's copies.")
  private boolean inDatabase;

  /** Where they are, empty where nobody said so. */
  Optional<ModelPlace> place(DataFolder data) {
    if (models != null && (inDatabase || data.isNamed())) {
      throw new UsageException(inDatabase ? "--models DIR or --models-in-database, not both"
          : "--models takes the place of --data: everything is in that folder and the database");
    }
    return inDatabase ? Optional.of(ModelPlace.database(data.path())) : Optional.ofNullable(models).map(ModelPlace::folder);
  }

  /** @throws UsageException where there is none: an embedded one can't be shared */
  static PostgresAddress requireDatabase(Optional<PostgresAddress> database) {
    return database.orElseThrow(
        () -> new UsageException("servers and workers need a PostgreSQL database in common: --database jdbc:postgresql://HOST/NAME"));
  }
}
