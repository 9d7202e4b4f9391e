package org.seamledger.ledger;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;

/** One SQLite file and one connection to it, used by one thread at a time; every piece of work is one transaction. */
final class Database implements AutoCloseable {

  private static final List<String> SCHEMA = List.of(
      "CREATE TABLE IF NOT EXISTS project(id TEXT PRIMARY KEY, name TEXT NOT NULL, created TEXT NOT NULL)",
      "CREATE TABLE IF NOT EXISTS analysis(id TEXT PRIMARY KEY, project TEXT NOT NULL REFERENCES project(id) ON DELETE CASCADE,"
          + " revision INTEGER NOT NULL, state TEXT NOT NULL, title TEXT NOT NULL, created TEXT NOT NULL, finished TEXT,"
          + " problem_code TEXT, problem TEXT, origin TEXT, UNIQUE(project, revision))",
      "CREATE TABLE IF NOT EXISTS file(analysis TEXT NOT NULL REFERENCES analysis(id) ON DELETE CASCADE, place INTEGER NOT NULL,"
          + " name TEXT NOT NULL, path TEXT NOT NULL, bytes INTEGER NOT NULL, role TEXT NOT NULL, PRIMARY KEY(analysis, place))",
      "CREATE TABLE IF NOT EXISTS ledger(analysis TEXT PRIMARY KEY REFERENCES analysis(id) ON DELETE CASCADE,"
          + " sha256 TEXT NOT NULL, bytes INTEGER NOT NULL, gzip BLOB NOT NULL)",
      "CREATE TABLE IF NOT EXISTS junction(analysis TEXT NOT NULL REFERENCES analysis(id) ON DELETE CASCADE, id TEXT NOT NULL,"
          + " PRIMARY KEY(analysis, id)) WITHOUT ROWID",
      "CREATE TABLE IF NOT EXISTS finding(analysis TEXT NOT NULL REFERENCES analysis(id) ON DELETE CASCADE, id TEXT NOT NULL,"
          + " place INTEGER NOT NULL, state TEXT NOT NULL DEFAULT 'open', reason TEXT NOT NULL DEFAULT '',"
          + " assignee TEXT NOT NULL DEFAULT '', version INTEGER NOT NULL DEFAULT 0, updated TEXT NOT NULL DEFAULT '',"
          + " PRIMARY KEY(analysis, id)) WITHOUT ROWID",
      "CREATE TABLE IF NOT EXISTS comment(id INTEGER PRIMARY KEY, analysis TEXT NOT NULL, finding TEXT NOT NULL,"
          + " author TEXT NOT NULL, text TEXT NOT NULL, created TEXT NOT NULL,"
          + " FOREIGN KEY(analysis, finding) REFERENCES finding(analysis, id) ON DELETE CASCADE)",
      "CREATE TABLE IF NOT EXISTS review(analysis TEXT NOT NULL, junction TEXT NOT NULL, state TEXT NOT NULL, note TEXT NOT NULL,"
          + " kind TEXT NOT NULL, detail TEXT NOT NULL, reason TEXT NOT NULL, carried INTEGER NOT NULL DEFAULT 0,"
          + " version INTEGER NOT NULL, updated TEXT NOT NULL, PRIMARY KEY(analysis, junction),"
          + " FOREIGN KEY(analysis, junction) REFERENCES junction(analysis, id) ON DELETE CASCADE) WITHOUT ROWID",
      // The result by the rules alone of an analysis whose result follows decisions of people, and a digest of these decisions.
      "CREATE TABLE IF NOT EXISTS by_rules(analysis TEXT PRIMARY KEY REFERENCES analysis(id) ON DELETE CASCADE,"
          + " decisions TEXT NOT NULL, sha256 TEXT NOT NULL, bytes INTEGER NOT NULL, gzip BLOB NOT NULL)",
      // Decisions carried over to a junction that changed: they have no effect until somebody looks.
      "CREATE TABLE IF NOT EXISTS stale(analysis TEXT NOT NULL, junction TEXT NOT NULL, PRIMARY KEY(analysis, junction),"
          + " FOREIGN KEY(analysis, junction) REFERENCES junction(analysis, id) ON DELETE CASCADE) WITHOUT ROWID",
      "CREATE INDEX IF NOT EXISTS comment_finding ON comment(analysis, finding)");

  private final ReentrantLock lock = new ReentrantLock();
  private final FileChannel guardChannel;
  private final FileLock guard;
  private final Connection connection;

  private Database(FileChannel guardChannel, FileLock guard, Connection connection) {
    this.guardChannel = guardChannel;
    this.guard = guard;
    this.connection = connection;
  }

  /** Opens or creates the file {@code ledger.db} in a folder, which no other process may be using. */
  static Database open(Path folder) {
    try {
      Files.createDirectories(folder);
      FileChannel channel =
          FileChannel.open(folder.resolve("in-use"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      FileLock guard = lock(channel, folder);
      Connection c = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("ledger.db").toAbsolutePath());
      try (Statement s = c.createStatement()) {
        s.execute("PRAGMA journal_mode=WAL");
        s.execute("PRAGMA synchronous=FULL");
        s.execute("PRAGMA foreign_keys=ON");
        s.execute("PRAGMA busy_timeout=5000");
        for (String table : SCHEMA) {
          s.execute(table);
        }
      }
      c.setAutoCommit(false);
      return new Database(channel, guard, c);
    } catch (IOException | SQLException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE,
          "The data folder " + folder + " cannot be used: " + e.getMessage(), e);
    }
  }

  private static FileLock lock(FileChannel channel, Path folder) throws IOException {
    FileLock guard;
    try {
      guard = channel.tryLock();
    } catch (OverlappingFileLockException e) {
      guard = null;
    }
    if (guard == null) {
      channel.close();
      throw new LedgerException(LedgerException.Reason.STORAGE,
          "The data folder " + folder + " is in use by another running server; stop it, or name another folder.");
    }
    return guard;
  }

  interface Work<T> {
    T run() throws SQLException;
  }


  interface Row<T> {
    T read(ResultSet row) throws SQLException;
  }

  /** Runs a piece of work as one transaction: all of it is kept, or nothing. */
  <T> T transaction(Work<T> work) {
    lock.lock();
    boolean kept = false;
    try {
      T result = work.run();
      connection.commit();
      kept = true;
      return result;
    } catch (SQLException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE, "Storage failed: " + e.getMessage(), e);
    } finally {
      if (!kept) {
        rollback();
      }
      lock.unlock();
    }
  }

  private void rollback() {
    try {
      connection.rollback();
    } catch (SQLException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE, "Storage failed: " + e.getMessage(), e);
    }
  }

  /** Runs one statement with its values in order; returns the number of rows that it touched. */
  int run(String sql, Object... values) throws SQLException {
    try (PreparedStatement s = connection.prepareStatement(sql)) {
      bindAll(s, values);
      return s.executeUpdate();
    }
  }

  <T> List<T> list(String sql, Row<T> row, Object... values) throws SQLException {
    try (PreparedStatement s = connection.prepareStatement(sql)) {
      bindAll(s, values);
      try (ResultSet r = s.executeQuery()) {
        List<T> all = new ArrayList<>();
        while (r.next()) {
          all.add(row.read(r));
        }
        return all;
      }
    }
  }

  <T> Optional<T> one(String sql, Row<T> row, Object... values) throws SQLException {
    return list(sql, row, values).stream().findFirst();
  }

  /** Runs one statement for many rows. */
  <T> void each(String sql, Iterable<T> rows, EachBinder<T> binder) throws SQLException {
    try (PreparedStatement s = connection.prepareStatement(sql)) {
      for (T row : rows) {
        binder.bind(s, row);
        s.addBatch();
      }
      s.executeBatch();
    }
  }

  interface EachBinder<T> {
    void bind(PreparedStatement statement, T row) throws SQLException;
  }

  private static void bindAll(PreparedStatement s, Object... values) throws SQLException {
    for (int i = 0; i < values.length; i++) {
      s.setObject(i + 1, values[i]);
    }
  }

  @Override
  public void close() {
    lock.lock();
    try {
      connection.close();
      guard.release();
      guardChannel.close();
    } catch (SQLException | IOException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE, "Storage did not close: " + e.getMessage(), e);
    } finally {
      lock.unlock();
    }
  }
}
