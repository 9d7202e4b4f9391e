package org.seamledger.ledger;

import java.nio.file.Path;
import java.util.Optional;

/** The storage of one server: a data folder, and a database in it or elsewhere, that it alone uses while it runs. */
public final class Store implements AutoCloseable {

  private final FolderGuard guard;
  private final Database db;
  private final Analyses analyses;
  private final Reviews reviews;
  private final Watches watches;
  private final Path uploads;
  private final Choices choices;
  private final ProjectPrices prices;
  private final SiteRecords records;
  private final SitePhotos photos;
  private final SiteLinks links;

  private Store(FolderGuard guard, Database db, String uploads, Path folder) {
    this.guard = guard;
    this.db = db;
    this.analyses = new Analyses(db);
    this.reviews = new Reviews(db);
    this.watches = new Watches(db, analyses);
    this.uploads = folder.resolve(uploads);
    this.prices = new ProjectPrices(db);
    this.records = new SiteRecords(db);
    this.photos = new SitePhotos(db);
    this.links = new SiteLinks(db);
    this.choices = new Choices(db, new ReviewCarryOver(db));
  }

  /**
   * Opens the storage in a folder, creating what is missing.
   *
   * @param database where analyses and reviews are kept instead of in the folder
   * @throws LedgerException where folder or database cannot be used, or another server uses one of them
   */
  public static Store open(Path folder, Optional<PostgresAddress> database) {
    FolderGuard guard = FolderGuard.take(folder);
    boolean open = false;
    try {
      Database db = Database.open(database.<Engine>map(PostgresEngine::new).orElseGet(() -> new SqliteEngine(folder)));
      Store store = new Store(guard, db, database.isPresent() ? "uploads-" + Identity.of(db) : "uploads", folder);
      open = true;
      return store;
    } finally {
      if (!open) {
        guard.close();
      }
    }
  }

  public Analyses analyses() {
    return analyses;
  }

  public Reviews reviews() {
    return reviews;
  }

  public Watches watches() {
    return watches;
  }

  /** @throws LedgerException where the database does not answer now */
  public void check() {
    db.transaction(() -> db.one("SELECT 1", r -> 1));
  }

  /** The folder for the files of this database's analyses: who starts with another database must not sweep them away. */
  public Path uploads() {
    return uploads;
  }

  public ProjectPrices prices() {
    return prices;
  }

  public Choices choices() {
    return choices;
  }

  /** What is done on the roof. */
  public SiteRecords records() {
    return records;
  }

  public SitePhotos photos() {
    return photos;
  }

  public SiteLinks links() {
    return links;
  }

  @Override
  public void close() {
    try {
      db.close();
    } finally {
      guard.close();
    }
  }
}
