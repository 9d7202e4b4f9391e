package org.seamledger.ledger;

import java.nio.file.Path;
import java.util.Optional;

/** The engines that every test of storage runs with. */
public enum StorageEngine {
  SQLITE {
    @Override
    public Optional<PostgresAddress> newDatabase() {
      return Optional.empty();
    }

    @Override
    Engine engine(Path folder, Optional<PostgresAddress> database) {
      return new SqliteEngine(folder);
    }
  },
  POSTGRESQL {
    @Override
    public Optional<PostgresAddress> newDatabase() {
      return Optional.of(TestPostgres.newDatabase());
    }

    @Override
    Engine engine(Path folder, Optional<PostgresAddress> database) {
      return new PostgresEngine(database.orElseThrow());
    }
  };

  /** A database with nothing in it; skips the test where this machine can't run one. */
  public abstract Optional<PostgresAddress> newDatabase();

  abstract Engine engine(Path folder, Optional<PostgresAddress> database);
}
