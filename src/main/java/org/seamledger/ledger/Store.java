package org.seamledger.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.sql.DataSource;

/**
 * The storage of one server: a data folder, and a database in it or elsewhere, that it alone uses while it runs. Or that of several
 * processes: a PostgreSQL database and a folder of models, both shared.
 */
public final class Store implements AutoCloseable {

  /** Null where storage is shared, and then the rest below is there. */
  private final FolderGuard guard;
  private final Shared shared;
  private final Database db;
  private final Analyses analyses;
  private final Reviews reviews;
  private final Watches watches;
  private final Path uploads;
  private final Choices choices;
  private final ProjectPrices prices;
  private final SectionRows sections;
  private volatile boolean left;
  private final SiteRecords records;
  private final SitePhotos photos;
  private final SiteLinks links;

  /** What storage has that several processes share. */
  private record Shared(PostgresAddress address, Processes.Member here, ModelFolder models, PostgresConnections connections,
      SharedTime time) {
  }

  private Store(FolderGuard guard, Database db, Path uploads, Shared shared) {
    this.guard = guard;
    this.shared = shared;
    this.db = db;
    this.analyses = new Analyses(db, Optional.ofNullable(shared).map(Shared::models));
    this.reviews = new Reviews(db);
    this.watches = new Watches(db, analyses);
    this.uploads = uploads;
    this.prices = new ProjectPrices(db);
    this.sections = new SectionRows(db);
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
      Store store = new Store(guard, db, folder.resolve(database.isPresent() ? "uploads-" + Identity.of(db) : "uploads"), null);
      store.requireOwnModels();
      open = true;
      return store;
    } finally {
      if (!open) {
        guard.close();
      }
    }
  }

  private void requireOwnModels() {
    boolean below =
        db.transaction(() -> db.one("SELECT 1 FROM file WHERE path LIKE 'sha256/%' OR path LIKE 'served/%'", r -> 1)).isPresent();
    if (below) {
      db.close();
      throw new LedgerException(LedgerException.Reason.STORAGE,
          "Models of this database's analyses are in a folder that several processes share; name it with --models DIR.");
    }
  }

  /**
   * Opens the storage that this process shares with others, on this machine or elsewhere.
   *
   * @param place of the models, the same for all
   * @param here this process; one that serves makes the folder where there is none
   * @throws LedgerException where they cannot be used, or not together with the processes that use them now
   */
  public static Store share(PostgresAddress database, ModelPlace place, Processes.Member here) {
    PostgresEngine engine = new PostgresEngine(database, true);
    Database db = Database.open(engine);
    boolean open = false;
    try {
      requireSamePlace(db, place);
      PostgresConnections connections = new PostgresConnections(database);
      ModelFolder models = place.inDatabase()
          ? ModelFolder.ofCopies(place.folder().resolve("models-" + Identity.of(db)), Identity.of(db),
              new ModelObjects(connections, engine))
          : ModelFolder.open(place.folder(), Identity.of(db), here.work().equals("serve"));
      Store store = new Store(null, db, models.served(), new Shared(database, here, models, connections, new SharedTime(connections)));
      store.processes().seen(here);
      open = true;
      return store;
    } finally {
      if (!open) {
        db.close();
      }
    }
  }

  private static void requireSamePlace(Database db, ModelPlace place) {
    boolean wrong = db.transaction(() -> db.one(place.inDatabase()
        ? "SELECT 1 FROM file WHERE path LIKE 'sha256/%' AND NOT EXISTS (SELECT 1 FROM model_object o WHERE o.path = file.path) LIMIT 1"
        : "SELECT 1 FROM model_object LIMIT 1", r -> 1)).isPresent();
    if (wrong) {
      throw new LedgerException(LedgerException.Reason.STORAGE, place.inDatabase()
          ? "Models of this database's analyses are in a folder that processes share; name it with --models DIR."
          : "The models of this database's analyses are in the database itself; say --models-in-database in place of --models.");
    }
  }

  /** Whether a file of an analysis is where its path says, brought there from the database if that has it. */
  public boolean has(StoredFile file) {
    Path path = Path.of(file.path());
    try {
      return isShared() ? models().present(path) : Files.isRegularFile(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whether other processes use it too. */
  public boolean isShared() {
    return shared != null;
  }

  private Shared shared() {
    if (shared == null) {
      throw new IllegalStateException("this storage is one process's own");
    }
    return shared;
  }

  /** This process, among those that share the storage. */
  public Processes.Member here() {
    return shared().here();
  }

  /** The folder of models, of a storage that is shared. */
  public ModelFolder models() {
    return shared().models();
  }

  /** Connections of their own for the library that hands out tickets, to a storage that is shared. */
  public DataSource connections() {
    return shared().connections();
  }

  /** The time that the processes have in common that share the storage. */
  public SharedTime time() {
    return shared().time();
  }

  /** Where the database is that is shared; never with credentials. */
  public PostgresAddress address() {
    return shared().address();
  }

  /** What one process at a time does, of those that share the storage. */
  public Lease lease(String name) {
    return new Lease(shared().address(), name);
  }

  public Processes processes() {
    shared();
    return new Processes(db);
  }

  public Queue queue() {
    shared();
    return new Queue(db, analyses);
  }

  public SessionRows sessions() {
    shared();
    return new SessionRows(db);
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

  public SectionRows sections() {
    return sections;
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
      if (shared != null && !left) {
        left = true;
        leave();
      }
      db.close();
    } finally {
      if (guard != null) {
        guard.close();
      }
    }
  }

  private void leave() {
    try {
      processes().gone(here());
    } catch (LedgerException e) {
      // Nobody hears of it for a while, then it is taken for dead.
    }
    shared.connections().close();
  }
}
