package org.seamledger.ledger;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.atomic.AtomicInteger;
import org.opentest4j.TestAbortedException;

/** A PostgreSQL server of the tests' own, started once, with a database for whoever asks. */
public final class TestPostgres {

  private static final AtomicInteger COUNT = new AtomicInteger();

  private TestPostgres() {
  }

  /** Started with the first test that needs it, stopped with the process. */
  private static final class Running {
    static final EmbeddedPostgres SERVER;
    static final String WHY_NOT;

    static {
      EmbeddedPostgres server = null;
      String fault = "";
      try {
        server = EmbeddedPostgres.builder().start();
      } catch (IOException | RuntimeException e) {
        fault = e.toString();
      }
      SERVER = server;
      WHY_NOT = fault;
    }
  }

  private static EmbeddedPostgres server() {
    if (Running.SERVER == null) {
      throw new TestAbortedException("PostgreSQL cannot be started on this machine: " + Running.WHY_NOT);
    }
    return Running.SERVER;
  }

  /** The connection URL of a fresh database. */
  public static String newUrl() {
    String name = "ledger" + COUNT.incrementAndGet();
    execute("CREATE DATABASE " + name);
    return server().getJdbcUrl("postgres", name);
  }

  /** Runs a statement as the server's owner, outside the program's own connection. */
  static void execute(String statement) {
    try (Connection c = server().getPostgresDatabase().getConnection(); Statement s = c.createStatement()) {
      s.execute(statement);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Ends every session of a database, as an administrator or a restart does. */
  public static void cutConnections(String url) {
    execute("SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '" + name(url) + "'");
  }

  /** From now on nobody gets into a database; who is in stays in. */
  public static void refuseConnections(String url) {
    execute("ALTER DATABASE " + name(url) + " ALLOW_CONNECTIONS false");
  }

  public static void admitConnections(String url) {
    execute("ALTER DATABASE " + name(url) + " ALLOW_CONNECTIONS true");
  }

  private static String name(String url) {
    return url.replaceFirst(".*/", "").replaceFirst("\\?.*", "");
  }
}
