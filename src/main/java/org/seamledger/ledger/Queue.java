package org.seamledger.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The analyses that wait, as several workers take them. A worker that was handed a ticket takes the analysis whose turn it is: of the
 * highest priority; of the project of which the fewest run; of the one that waited longest for its turn; the oldest. The ticket stands in
 * the row, so that who gets it after a worker died takes up the same analysis. PostgreSQL only.
 */
public final class Queue {

  /** The library's names for the tickets: of a first run by the rules, and of a run with what people decided. */
  public static final String ANALYSIS = "analysis";
  public static final String FOLLOW = "follow";
  /** The library's table. */
  public static final String TICKETS = "scheduled_tasks";

  private static final String RUNNING = "(SELECT project, COUNT(*) AS n FROM analysis WHERE state = 'running' GROUP BY project) r";
  private static final String PICK = "SELECT a.id FROM analysis a LEFT JOIN turn t ON t.project = a.project LEFT JOIN " + RUNNING
      + " ON r.project = a.project WHERE a.state = 'queued' AND COALESCE(r.n, 0) < ?"
      + " ORDER BY a.priority DESC, COALESCE(r.n, 0), COALESCE(t.served, 0), a.created, a.id LIMIT 1";
  private static final int MOST_MENDED = 500;

  private final Database db;
  private final Analyses analyses;

  Queue(Database db, Analyses analyses) {
    this.db = db;
    this.analyses = analyses;
  }

  /**
   * Takes the analysis whose turn it is.
   *
   * @param most of one project at once
   */
  public Optional<StoredAnalysis> take(String holder, String ticket, int most) {
    return db.stepwise(() -> {
      // One at a time: who comes second must see whom the first took.
      db.one("SELECT pg_advisory_xact_lock(hashtextextended(current_schema(), 1936026990))", r -> 1);
      Optional<String> id = db.one(PICK, r -> r.getString(1), most);
      if (id.isEmpty()) {
        return Optional.empty();
      }
      begin(id.get(), holder, ticket);
      db.run("INSERT INTO turn(project, served) SELECT project, (SELECT COALESCE(MAX(served), 0) + 1 FROM turn) FROM analysis WHERE id = ?"
          + " ON CONFLICT(project) DO UPDATE SET served = excluded.served", id.get());
      db.run("DELETE FROM scheduled_tasks WHERE task_name = ? AND task_instance = ? AND task_instance <> ? AND NOT picked", ANALYSIS,
          id.get(), ticket);
      return Optional.of(analyses.get(id.get()));
    });
  }

  private void begin(String id, String holder, String ticket) throws SQLException {
    db.run("UPDATE analysis SET state = 'running', starts = starts + 1, holder = ?, ticket = ?, stage = 'Starting', millionths = 0"
        + " WHERE id = ?", holder, ticket, id);
  }

  /** What became of an analysis whose worker died. */
  public record Inheritance(StoredAnalysis analysis, boolean givenUp) {
  }

  /**
   * Takes up the analysis that a ticket's last worker left when it died; one during which {@link Analyses#MOST_DEATHS} died has failed.
   * Empty where it left none.
   */
  public Optional<Inheritance> inherit(String holder, String ticket) {
    return db.stepwise(() -> {
      Optional<String> left =
          db.one("SELECT id FROM analysis WHERE state = 'running' AND ticket = ? FOR UPDATE", r -> r.getString(1), ticket);
      if (left.isEmpty()) {
        return Optional.empty();
      }
      boolean givenUp = db.run("UPDATE analysis SET state = 'failed', finished = ?, problem_code = ?, problem = ?, holder = NULL"
          + " WHERE id = ? AND starts >= ?", Analyses.now(), Analyses.DIED, Analyses.DIED_WORDS, left.get(), Analyses.MOST_DEATHS) == 1;
      if (!givenUp) {
        begin(left.get(), holder, ticket);
      }
      return Optional.of(new Inheritance(analyses.get(left.get()), givenUp));
    });
  }

  /** Notes how far a run is; false where its holder shall end it: it was cancelled or removed, or another worker has it now. */
  public boolean tell(String id, String holder, String stage, double fraction) {
    return db.stepwise(() -> db.run("UPDATE analysis SET stage = ?, millionths = ? WHERE id = ? AND holder = ? AND state IN"
        + " ('running', 'done')", stage, Math.round(fraction * 1e6), id, holder)) == 1;
  }

  /** Notes who computes a result again with what people decided. */
  public void hold(String id, String holder) {
    db.stepwise(() -> db.run("UPDATE analysis SET holder = ?, stage = 'Starting', millionths = 0, trouble = NULL WHERE id = ?"
        + " AND state = 'done'", holder, id));
  }

  /** Notes why a result could not follow its decisions. */
  public void trouble(String id, String why) {
    db.stepwise(() -> db.run("UPDATE analysis SET trouble = ? WHERE id = ?", why, id));
  }

  /** Whether nothing is known that keeps a result from following its decisions. */
  public boolean hasNoTrouble(String id) {
    return db.stepwise(() -> db.one("SELECT 1 FROM analysis WHERE id = ? AND trouble IS NULL", r -> 1, id)).isPresent();
  }

  /** Puts back what a worker has not ended, since the worker ends in good order: what ran is not why. */
  public void putBack(String id, String holder) {
    db.stepwise(() -> db.run("UPDATE analysis SET state = 'queued', starts = starts - 1, holder = NULL, ticket = NULL, stage = NULL"
        + " WHERE id = ? AND holder = ? AND state = 'running'", id, holder));
  }

  /** Notes that the worker from whom another took a run is alive after all: it was cut off, and the model is not why. */
  public void survived(String id, String holder) {
    db.stepwise(() -> db.run("UPDATE analysis SET starts = starts - 1 WHERE id = ? AND holder <> ? AND state = 'running' AND starts > 1",
        id, holder));
  }

  /** Whether results are to be computed again with what people decided: they are waited for, and come before the next analysis. */
  public boolean hasFollowing() {
    return db.stepwise(() -> db.one("SELECT 1 FROM scheduled_tasks WHERE task_name = ? AND NOT picked LIMIT 1", r -> 1, FOLLOW))
        .isPresent();
  }

  /**
   * Analyses that wait and have no ticket, since a process ended between two steps. What runs by a ticket that is gone waits again.
   *
   * @param most of one project at once
   */
  public List<String> withoutTicket(int most) {
    return db.stepwise(() -> {
      db.run("UPDATE analysis SET state = 'queued', holder = NULL, ticket = NULL WHERE state = 'running' AND NOT EXISTS (SELECT 1 FROM"
          + " scheduled_tasks s WHERE s.task_name = ? AND s.task_instance = analysis.ticket)", ANALYSIS);
      return db.list("SELECT a.id FROM analysis a LEFT JOIN " + RUNNING + " ON r.project = a.project WHERE a.state = 'queued'"
          + " AND COALESCE(r.n, 0) < ? AND NOT EXISTS (SELECT 1 FROM scheduled_tasks s WHERE s.task_name = ? AND s.task_instance = a.id)"
          + " ORDER BY a.created LIMIT " + MOST_MENDED, r -> r.getString(1), most, ANALYSIS);
    });
  }

  /**
   * How far a run is.
   *
   * @param stage empty where nobody has begun
   * @param trouble why the result does not follow its decisions, or empty
   */
  public record Standing(State state, String stage, double fraction, Optional<String> trouble) {
  }

  /** How far these are, as far as they are there. */
  public Map<String, Standing> standing(Set<String> ids) {
    return db.stepwise(() -> {
      Map<String, Standing> found = new HashMap<>();
      db.among("SELECT state, stage, millionths, trouble, id FROM analysis WHERE id IN ?", ids,
          r -> found.put(r.getString(5), standing(r)));
      return found;
    });
  }

  private static Standing standing(ResultSet r) throws SQLException {
    return new Standing(State.of(r.getString(1)), Optional.ofNullable(r.getString(2)).orElse(""), r.getLong(3) / 1e6,
        Optional.ofNullable(r.getString(4)));
  }

  /** Stored paths of all files that analyses refer to. */
  public Set<String> paths() {
    return db.stepwise(() -> new HashSet<>(db.list("SELECT DISTINCT path FROM file", r -> r.getString(1))));
  }

  /** The files that stand outside the shared folder: stored path and name. */
  public Map<String, String> outside() {
    return db.stepwise(() -> {
      Map<String, String> found = new HashMap<>();
      db.list("SELECT DISTINCT path, name FROM file", r -> found.put(r.getString(1), r.getString(2)));
      found.keySet().removeIf(ModelFolder::isBelow);
      return found;
    });
  }

  /** Notes that a file stands elsewhere now. */
  public void moved(String before, String after) {
    db.transaction(() -> db.run("UPDATE file SET path = ? WHERE path = ?", analyses.stored(after), before));
  }
}
