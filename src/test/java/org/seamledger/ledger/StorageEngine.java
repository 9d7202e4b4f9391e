package org.seamledger.ledger;

import java.nio.file.Path;
import java.util.Optional;

/** The engines that every test of storage runs with. */
public enum StorageEngine {
  SQLITE {
    @Override
    public Optional<String> newUrl() {
      return Optional.empty();
    }

    @Override
    Engine engine(Path folder, Optional<PostgresAddress> database) {
      return new SqliteEngine(folder);
    }
  },
  POSTGRESQL {
    @Override
    public Optional<String> newUrl() {
      return Optional.of(TestPostgres.newUrl());
    }

    @Override
    Engine engine(Path folder, Optional<PostgresAddress> database) {
      return new PostgresEngine(database.orElseThrow());
    }
  };

  /** The URL of a database with nothing in it; none for the embedded engine. Skips the test where this machine can't run one. */
  public abstract Optional<String> newUrl();

  public Optional<PostgresAddress> newDatabase() {
    return newUrl().map(url -> PostgresAddress.of(url, Optional.empty(), Optional.empty()));
  }

  abstract Engine engine(Path folder, Optional<PostgresAddress> database);
}
