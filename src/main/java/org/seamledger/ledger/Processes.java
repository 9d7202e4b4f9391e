package org.seamledger.ledger;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** The processes that share a database, each of which says now and then that it is alive. PostgreSQL only. */
public final class Processes {

  /** Milliseconds since 1970 by the clock of the database, which all processes have in common. */
  static final String NOW = "CAST(EXTRACT(EPOCH FROM clock_timestamp()) * 1000 AS BIGINT)";
  /** Who has said nothing for so long (ms) is taken for dead. */
  private static final int SILENCE = 20_000;
  /** Where that clock was set back, who died before would seem to live until it is as late again. */
  private static final String ALIVE = "SELECT id, work, host, version, rules FROM process WHERE seen BETWEEN " + NOW + " - " + SILENCE
      + " AND " + NOW + " + " + SILENCE + " ORDER BY work, host, id";

  private final Database db;

  Processes(Database db) {
    this.db = db;
  }

  /**
   * One of them.
   *
   * @param work {@code serve} or {@code work}
   * @param rules what identifies the rules that it applies
   */
  public record Member(String id, String work, String host, String version, String rules) {

    /** This process. */
    public static Member here(String work, String version, String rules) {
      return new Member(Analyses.newId(), work, hostName(), version, rules);
    }

    private static String hostName() {
      try {
        return InetAddress.getLocalHost().getHostName();
      } catch (UnknownHostException e) {
        return "unknown";
      }
    }

    String words() {
      return work + " " + version + " on " + host;
    }
  }

  /** Says that a process is alive; forgets those that have been dead for long. */
  public void seen(Member m) {
    db.stepwise(() -> {
      db.run("INSERT INTO process(id, work, host, version, rules, seen) VALUES(?,?,?,?,?," + NOW + ") ON CONFLICT(id) DO UPDATE SET seen = "
          + NOW, m.id(), m.work(), m.host(), m.version(), m.rules());
      db.run("DELETE FROM process WHERE seen < " + NOW + " - 100 * " + SILENCE);
      return null;
    });
  }

  /** Says that a process ends. */
  public void gone(Member m) {
    db.stepwise(() -> db.run("DELETE FROM process WHERE id = ?", m.id()));
  }

  /** Those that are alive, by what they do. */
  public List<Member> alive() {
    return db.stepwise(() -> db.list(ALIVE, Processes::member));
  }

  private static Member member(ResultSet r) throws SQLException {
    return new Member(r.getString(1), r.getString(2), r.getString(3), r.getString(4), r.getString(5));
  }

  /** The same in words, for a message. */
  static String alive(Connection connection) throws SQLException {
    List<String> all = new ArrayList<>();
    try (Statement s = connection.createStatement(); ResultSet r = s.executeQuery(ALIVE)) {
      while (r.next()) {
        all.add(member(r).words());
      }
    }
    return all.isEmpty() ? "they have not said which" : String.join(", ", all);
  }
}
