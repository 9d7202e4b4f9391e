package org.seamledger.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One connection to a database, used by one thread at a time; every piece of work is one transaction. Where the connection is lost, the
 * next piece of work opens another. Where the engine allows it a second connection reads, so that who looks at a result need not wait until
 * another is written to the disk.
 */
final class Database implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Database.class);
  /** After a failed attempt to reach the database, the next waits this long, and who comes meanwhile is told at once. */
  private static final long PATIENCE_NANOS = 1_000_000_000L;
  /** So often is work repeated that another process came in the way of. */
  private static final int MOST_CONFLICTS = 60;
  private static final int CONFLICT_PAUSE_MILLIS = 40;
  /** So many values every engine takes in one statement. */
  private static final int MOST_VALUES = 500;

  private final ReentrantLock lock = new ReentrantLock();
  private final Engine engine;
  private final List<String> steps;
  /** Null where the one connection does both. */
  private Database reader;
  /** Null while there is none. */
  private Connection connection;
  private LedgerException lastFailure;
  private long lastTry;
  /** The last failure that the log has. */
  private String said = "";

  private Database(Engine engine, List<String> steps) {
    this.engine = engine;
    this.steps = steps;
  }

  /**
   * Opens a database and brings its tables up to date.
   *
   * @throws LedgerException where it cannot be used, or isn't up within the engine's patience
   */
  static Database open(Engine engine) {
    return open(engine, StorageSchema.STEPS);
  }

  static Database open(Engine engine, List<String> steps) {
    Database db = new Database(engine, steps);
    db.connection = new DatabaseWait(engine, engine.patience()).first(db::connect);
    if (engine.readsBeside()) {
      db.reader = new Database(engine, steps);
      db.reader.connection = new DatabaseWait(engine, engine.patience()).first(db.reader::connect);
    }
    return db;
  }

  private Connection connect() throws SQLException {
    Connection c = engine.connect();
    boolean usable = false;
    try {
      engine.bringUpToDate(c, steps);
      usable = true;
      return c;
    } finally {
      if (!usable) {
        c.close();
      }
    }
  }

  /** May run twice, where the connection is lost on the way: it does nothing but read and write the database. */
  interface Work<T> {
    T run() throws SQLException;
  }

  interface Row<T> {
    T read(ResultSet row) throws SQLException;
  }

  /**
   * Runs a piece of work as one transaction: all of it is kept, or nothing. Work within such work is part of it. Where several processes
   * use the database, the outcome is as if their transactions came one after another.
   *
   * @throws LedgerException of {@link LedgerException.Reason#UNREACHABLE} where the database is away; the next call tries it again
   */
  <T> T transaction(Work<T> work) {
    if (lock.isHeldByCurrentThread()) {
      return joined(work);
    }
    lock.lock();
    try {
      for (int conflicts = 0;; conflicts++) {
        try {
          return whole(work);
        } catch (ConflictException e) {
          if (conflicts == MOST_CONFLICTS) {
            throw failed((SQLException) e.getCause());
          }
          pause(1 + (int) (Math.random() * Math.min(CONFLICT_PAUSE_MILLIS, 2 << Math.min(conflicts, 10))));
        }
      }
    } finally {
      lock.unlock();
    }
  }

  /**
   * Runs a piece of work that reads, and writes nothing: it sees all that was kept before. Within a transaction it is part of it.
   *
   * @throws LedgerException as {@link #transaction}
   */
  <T> T read(Work<T> work) {
    return reader == null || lock.isHeldByCurrentThread() ? transaction(work) : reader.transaction(work);
  }

  /** The connection that this thread works with. */
  private Connection current() {
    return reader != null && reader.lock.isHeldByCurrentThread() ? reader.connection : connection;
  }

  /** As {@link #transaction}, for work that several processes do at once on different rows: each statement sees what others kept before. */
  <T> T stepwise(Work<T> work) {
    return transaction(() -> {
      run("SET TRANSACTION ISOLATION LEVEL READ COMMITTED");
      return work.run();
    });
  }

  private static <T> T joined(Work<T> work) {
    try {
      return work.run();
    } catch (SQLException e) {
      throw Database.<RuntimeException>unchecked(e);
    }
  }

  /** What fails within a transaction is the transaction's to handle, as it is. */
  @SuppressWarnings("unchecked")
  private static <E extends Exception> E unchecked(Exception e) throws E {
    throw (E) e;
  }

  private static void pause(int millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private <T> T whole(Work<T> work) throws ConflictException {
    try {
      if (connection != null) {
        try {
          return attempt(work);
        } catch (ConnectionLostException e) {
          // Nothing was kept: once more, on another connection.
        }
      }
      reconnect();
      return attempt(work);
    } catch (ConnectionLostException e) {
      throw unreachable((SQLException) e.getCause());
    }
  }

  /** Another process came in the way, and nothing was kept. */
  private static final class ConflictException extends Exception {
    private static final long serialVersionUID = 1;

    ConflictException(SQLException cause) {
      super(cause);
    }
  }

  /** The connection went before anything was kept. */
  private static final class ConnectionLostException extends Exception {
    private static final long serialVersionUID = 1;

    ConnectionLostException(SQLException cause) {
      super(cause);
    }
  }

  private <T> T attempt(Work<T> work) throws ConnectionLostException, ConflictException {
    boolean kept = false;
    try {
      T result = work.run();
      commit();
      kept = true;
      return result;
    } catch (SQLException e) {
      if (engine.isLost(e)) {
        drop();
        throw new ConnectionLostException(e);
      }
      if (engine.isConflict(e)) {
        throw new ConflictException(e);
      }
      throw failed(e);
    } finally {
      if (!kept) {
        rollback();
      }
    }
  }

  /** Where the connection goes just now nobody knows whether the work was kept, so it must not be done again. */
  private void commit() throws SQLException {
    try {
      connection.commit();
    } catch (SQLException e) {
      if (engine.isLost(e)) {
        drop();
        throw unreachable(e);
      }
      throw e;
    }
  }

  private void rollback() {
    if (connection == null) {
      return;
    }
    try {
      connection.rollback();
    } catch (SQLException e) {
      // Whatever state it is in now: the next piece of work begins with another, and what failed is said by who caused this.
      drop();
    }
  }

  private void drop() {
    try {
      connection.close();
    } catch (SQLException e) {
      // It is gone already.
    }
    connection = null;
  }

  private void reconnect() {
    if (lastFailure != null && System.nanoTime() - lastTry < PATIENCE_NANOS) {
      throw lastFailure;
    }
    try {
      connection = connect();
      LOG.info("database is back");
      lastFailure = null;
    } catch (SQLException e) {
      lastFailure = unreachable(e);
    } catch (LedgerException e) {
      lastFailure = e;
    }
    if (connection == null) {
      // Once, not with every attempt.
      if (!lastFailure.getMessage().equals(said)) {
        LOG.warn("{}", lastFailure.getMessage());
      }
      said = lastFailure.getMessage();
      lastTry = System.nanoTime();
      throw lastFailure;
    }
    said = "";
  }

  /** A full disk stays one, though the attempt to connect is what hits it. */
  private LedgerException unreachable(SQLException e) {
    LedgerException.Reason reason = engine.explain(e).reason();
    return new LedgerException(reason == LedgerException.Reason.FULL ? reason : LedgerException.Reason.UNREACHABLE,
        engine.name() + " " + engine.explain(e).text(), e);
  }

  private LedgerException failed(SQLException e) {
    StorageFault fault = engine.explain(e);
    return new LedgerException(fault.reason(), engine.name() + " " + fault.text(), e);
  }

  /** Runs one statement with its values in order; returns the number of rows that it touched. */
  int run(String sql, Object... values) throws SQLException {
    try (PreparedStatement s = current().prepareStatement(sql)) {
      bindAll(s, values);
      return s.executeUpdate();
    }
  }

  <T> List<T> list(String sql, Row<T> row, Object... values) throws SQLException {
    try (PreparedStatement s = current().prepareStatement(sql)) {
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

  /**
   * Runs one query for many values, in pieces where they are too many for one statement.
   *
   * @param sql with {@code IN ?} where the values go
   */
  <T> List<T> among(String sql, Collection<String> values, Row<T> row) throws SQLException {
    List<String> rest = List.copyOf(values);
    List<T> all = new ArrayList<>();
    for (int from = 0; from < rest.size(); from += MOST_VALUES) {
      List<String> piece = rest.subList(from, Math.min(rest.size(), from + MOST_VALUES));
      String marks = String.join(",", Collections.nCopies(piece.size(), "?"));
      all.addAll(list(sql.replace("IN ?", "IN (" + marks + ")"), row, piece.toArray()));
    }
    return all;
  }

  <T> Optional<T> one(String sql, Row<T> row, Object... values) throws SQLException {
    return list(sql, row, values).stream().findFirst();
  }

  /** Runs one statement for many rows. */
  <T> void each(String sql, Iterable<T> rows, EachBinder<T> binder) throws SQLException {
    try (PreparedStatement s = current().prepareStatement(sql)) {
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
      s.setObject(i + 1, values[i] instanceof String text ? storable(text) : values[i]);
    }
  }

  /** What no engine could give back as it came, NUL and half characters, becomes the replacement character. */
  static String storable(String text) {
    return text.codePoints().anyMatch(Database::isUnstorable)
        ? text.codePoints().map(c -> isUnstorable(c) ? 0xFFFD : c)
            .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString()
        : text;
  }

  private static boolean isUnstorable(int codePoint) {
    return codePoint == 0 || codePoint >= Character.MIN_SURROGATE && codePoint <= Character.MAX_SURROGATE;
  }

  @Override
  public void close() {
    if (reader != null) {
      reader.close();
    }
    lock.lock();
    try {
      if (connection != null) {
        connection.close();
      }
    } catch (SQLException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE, engine.name() + " did not close: " + engine.explain(e).text(), e);
    } finally {
      lock.unlock();
    }
  }
}
