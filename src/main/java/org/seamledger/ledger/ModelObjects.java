package org.seamledger.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;

/**
 * Models as large objects of the database, each by its stored path; PostgreSQL only. They come and go in pieces over connections of their
 * own, so that a large one holds up nobody and takes no memory.
 */
final class ModelObjects {

  private static final int PIECE = 1 << 20;
  private static final String SENT = "UPDATE model_object SET sent = " + Processes.NOW + " WHERE path = ?";
  private static final String UNWANTED = "DELETE FROM model_object WHERE sent < " + Processes.NOW + " - ? AND NOT EXISTS"
      + " (SELECT 1 FROM file WHERE file.path = model_object.path) RETURNING content";

  private final DataSource connections;
  private final Engine engine;

  ModelObjects(DataSource connections, Engine engine) {
    this.connections = connections;
    this.engine = engine;
  }

  private interface Work<T> {
    T run(Connection c) throws SQLException, IOException;
  }

  private <T> T transaction(Work<T> work) throws IOException {
    try (Connection c = connections.getConnection()) {
      c.setAutoCommit(false);
      T result = work.run(c);
      c.commit();
      return result;
    } catch (SQLException e) {
      StorageFault fault = engine.explain(e);
      throw new LedgerException(engine.isLost(e) ? LedgerException.Reason.UNREACHABLE : fault.reason(), engine.name() + " " + fault.text(),
          e);
    }
  }

  /** Whether it is there; if so it counts as sent just now, so that nobody cleans it away before an analysis refers to it. */
  boolean isKnown(String path) throws IOException {
    return transaction(c -> update(c, SENT, path) == 1);
  }

  /** Puts a file there, unless it is there already: what has a path never changes. */
  void put(String path, Path file) throws IOException {
    if (isKnown(path)) {
      return;
    }
    transaction(c -> {
      long content = ask(c, "SELECT lo_creat(-1)");
      long bytes = write(c, content, file);
      if (update(c, "INSERT INTO model_object(path, content, bytes, sent) VALUES(?, ?, ?, " + Processes.NOW + ")"
          + " ON CONFLICT(path) DO NOTHING", path, content, bytes) == 0) {
        // Another process was faster.
        ask(c, "SELECT lo_unlink(CAST(? AS OID))", content);
      }
      return null;
    });
  }

  private static long write(Connection c, long content, Path file) throws SQLException, IOException {
    long at = 0;
    try (InputStream in = Files.newInputStream(file);
        PreparedStatement s = c.prepareStatement("SELECT lo_put(CAST(? AS OID), ?, ?)")) {
      for (byte[] piece = in.readNBytes(PIECE); piece.length > 0; piece = in.readNBytes(PIECE)) {
        s.setLong(1, content);
        s.setLong(2, at);
        s.setBytes(3, piece);
        s.execute();
        at += piece.length;
      }
    }
    return at;
  }

  /** Writes a file as it is there; false, and nothing written, where it is not. */
  boolean get(String path, Path target) throws IOException {
    return transaction(c -> {
      try (PreparedStatement s = c.prepareStatement("SELECT content, bytes FROM model_object WHERE path = ?")) {
        s.setString(1, path);
        try (ResultSet r = s.executeQuery()) {
          if (!r.next()) {
            return false;
          }
          read(c, r.getLong(1), r.getLong(2), target);
          return true;
        }
      }
    });
  }

  private static void read(Connection c, long content, long bytes, Path target) throws SQLException, IOException {
    try (OutputStream out = Files.newOutputStream(target);
        PreparedStatement s = c.prepareStatement("SELECT lo_get(CAST(? AS OID), ?, ?)")) {
      for (long at = 0; at < bytes; at += PIECE) {
        s.setLong(1, content);
        s.setLong(2, at);
        s.setInt(3, PIECE);
        try (ResultSet r = s.executeQuery()) {
          r.next();
          out.write(r.getBytes(1));
        }
      }
    }
  }

  /** Removes what no analysis refers to and was sent so long ago; how many went. */
  int clean(Duration kept) throws IOException {
    return transaction(c -> {
      List<Long> gone = new ArrayList<>();
      try (PreparedStatement s = c.prepareStatement(UNWANTED)) {
        s.setLong(1, kept.toMillis());
        try (ResultSet r = s.executeQuery()) {
          while (r.next()) {
            gone.add(r.getLong(1));
          }
        }
      }
      for (long content : gone) {
        ask(c, "SELECT lo_unlink(CAST(? AS OID))", content);
      }
      return gone.size();
    });
  }

  private static int update(Connection c, String sql, Object... values) throws SQLException {
    try (PreparedStatement s = bound(c, sql, values)) {
      return s.executeUpdate();
    }
  }

  private static long ask(Connection c, String sql, Object... values) throws SQLException {
    try (PreparedStatement s = bound(c, sql, values); ResultSet r = s.executeQuery()) {
      r.next();
      return r.getLong(1);
    }
  }

  private static PreparedStatement bound(Connection c, String sql, Object... values) throws SQLException {
    PreparedStatement s = c.prepareStatement(sql);
    for (int i = 0; i < values.length; i++) {
      s.setObject(i + 1, values[i]);
    }
    return s;
  }
}
