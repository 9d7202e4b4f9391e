package org.seamledger.ledger;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
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
    execute(server().getPostgresDatabase(), statement);
  }

  /** Runs statements in a database as the server's owner, outside the program's own connection. */
  static void executeIn(String url, String... statements) {
    for (String statement : statements) {
      execute(server().getDatabase("postgres", name(url)), statement);
    }
  }

  private static void execute(DataSource database, String statement) {
    try (Connection c = database.getConnection(); Statement s = c.createStatement()) {
      s.execute(statement);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The first column that a query gives in a database. */
  public static List<String> rows(String url, String query) {
    try (Connection c = server().getDatabase("postgres", name(url)).getConnection(); Statement s = c.createStatement();
        ResultSet r = s.executeQuery(query)) {
      List<String> all = new ArrayList<>();
      while (r.next()) {
        all.add(r.getString(1));
      }
      return all;
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Makes a role that gets in by this line of pg_hba.conf alone: its last word is the way of authentication. */
  static void createRole(String role, String password, String line) {
    execute("CREATE ROLE " + role + " LOGIN PASSWORD '" + password + "'");
    try {
      Path rules = Path.of(rows(server().getJdbcUrl("postgres", "postgres"), "SHOW hba_file").get(0));
      Files.writeString(rules, line + System.lineSeparator() + Files.readString(rules));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    execute("SELECT pg_reload_conf()");
  }

  static int port() {
    return server().getPort();
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
