package org.seamledger.ledger;

import java.nio.file.Path;

/** The storage of one server: a folder that it alone uses while it runs. */
public final class Store implements AutoCloseable {

  private final Database db;
  private final Analyses analyses;
  private final Reviews reviews;
  private final Choices choices;

  private Store(Database db) {
    this.db = db;
    this.analyses = new Analyses(db);
    this.reviews = new Reviews(db);
    this.choices = new Choices(db, new Carrier(db));
  }

  /** Opens the storage in a folder, creating both where needed. */
  public static Store open(Path folder) {
    return new Store(Database.open(folder));
  }

  public Analyses analyses() {
    return analyses;
  }

  public Reviews reviews() {
    return reviews;
  }

  public Choices choices() {
    return choices;
  }

  @Override
  public void close() {
    db.close();
  }
}
