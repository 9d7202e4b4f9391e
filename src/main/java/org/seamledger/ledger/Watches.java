package org.seamledger.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.ledger.WatchedRevision.Stage;

/**
 * What is known of projects on servers of models: which are watched, which of their revisions were found, analysed and answered. Every
 * method is one transaction, so that a process that dies leaves each revision at the stage that it had reached.
 */
public final class Watches {

  private static final String PROJECT =
      "SELECT server, served, name, project, watched, checked, problem_code, problem FROM served_project ";
  private static final String REVISION =
      "SELECT r.server, r.served, p.name, r.revision, r.number, r.comment, r.created, r.stage, r.attempts,"
          + " r.analysis, r.problem FROM watched_revision r JOIN served_project p ON p.server = r.server AND p.served = r.served ";
  private static final String THIS_PROJECT = "WHERE server = ? AND served = ?";
  private static final String THIS_REVISION = "WHERE server = ? AND served = ? AND revision = ?";

  private final Database db;
  private final Analyses analyses;

  Watches(Database db, Analyses analyses) {
    this.db = db;
    this.analyses = analyses;
  }

  /** Notes a project, or its new name. */
  public Watch note(String server, long served, String name) {
    return db.transaction(() -> noted(server, served, name));
  }

  private Watch noted(String server, long served, String name) throws SQLException {
    if (db.run("UPDATE served_project SET name = ? " + THIS_PROJECT, name, server, served) == 0) {
      db.run("INSERT INTO served_project(server, served, name) VALUES(?,?,?)", server, served, name);
    }
    return found(server, served).orElseThrow();
  }

  /** Begins to watch a project, or ends it; a watch that begins again passes over what came meanwhile, but for the newest. */
  public Watch turn(String server, long served, String name, boolean on) {
    return db.transaction(() -> {
      noted(server, served, name);
      db.run("UPDATE served_project SET watched = ? " + THIS_PROJECT, on ? 1 : 0, server, served);
      if (!on) {
        db.run("UPDATE served_project SET begun = 0, problem_code = NULL, problem = NULL " + THIS_PROJECT, server, served);
      }
      return found(server, served).orElseThrow();
    });
  }

  /** Every project that was ever watched or analysed, by server and number. */
  public List<Watch> list() {
    return db.read(() -> db.list(PROJECT + "ORDER BY server, served", Watches::watch));
  }

  public Optional<Watch> get(String server, long served) {
    return db.read(() -> found(server, served));
  }

  private Optional<Watch> found(String server, long served) throws SQLException {
    return db.one(PROJECT + THIS_PROJECT, Watches::watch, server, served);
  }

  private static Watch watch(ResultSet r) throws SQLException {
    return new Watch(r.getString(1), r.getLong(2), r.getString(3), text(r, 4), r.getInt(5) != 0, text(r, 6), text(r, 7), text(r, 8));
  }

  private static Optional<String> text(ResultSet r, int column) throws SQLException {
    return Optional.ofNullable(r.getString(column));
  }

  /** Notes that the server answered. */
  public void checked(String server, long served) {
    db.transaction(
        () -> db.run("UPDATE served_project SET checked = ?, problem_code = NULL, problem = NULL " + THIS_PROJECT, Analyses.now(),
            server, served));
  }

  /** Notes what went wrong with a project. */
  public void failed(String server, long served, String code, String problem) {
    db.transaction(() -> db.run("UPDATE served_project SET problem_code = ?, problem = ? " + THIS_PROJECT, code, problem, server, served));
  }

  /** A revision as a server lists it. */
  public record Listed(long revision, int number, String comment, String created) {
  }

  /**
   * Notes the revisions that a project has now. Those not known yet shall be analysed; when the watch begins only the newest of them, and
   * one that is already being worked on.
   *
   * @param listed the oldest first
   */
  public void found(String server, long served, List<Listed> listed) {
    db.transaction(() -> {
      boolean begins = db.one("SELECT begun FROM served_project " + THIS_PROJECT, r -> r.getInt(1), server, served).orElse(0) == 0;
      for (int i = 0; i < listed.size(); i++) {
        Listed l = listed.get(i);
        boolean wanted = !begins || i == listed.size() - 1;
        if (db.one("SELECT 1 FROM watched_revision " + THIS_REVISION, r -> 1, server, served, l.revision).isEmpty()) {
          db.run("INSERT INTO watched_revision(server, served, revision, number, comment, created, stage) VALUES(?,?,?,?,?,?,?)", server,
              served,
              l.revision, l.number, l.comment, l.created, (wanted ? Stage.FOUND : Stage.PASSED).word());
        } else if (begins && wanted) {
          db.run("UPDATE watched_revision SET stage = ? " + THIS_REVISION + " AND stage = ?", Stage.FOUND.word(), server, served,
              l.revision,
              Stage.PASSED.word());
        }
      }
      db.run("UPDATE served_project SET begun = 1 " + THIS_PROJECT, server, served);
      return null;
    });
  }

  /** The revisions of a watched project, the oldest first. */
  public List<WatchedRevision> revisions(String server, long served) {
    return db.transaction(
        () -> db.list(REVISION + "WHERE r.server = ? AND r.served = ? ORDER BY r.revision", Watches::revision, server, served));
  }

  /** The revisions on which there is work left, the oldest first. */
  public List<WatchedRevision> open(String server, long served) {
    return revisions(server, served).stream().filter(Watches::isOpen).toList();
  }

  /** Whether there is work left on a revision. */
  public static boolean isOpen(WatchedRevision r) {
    return r.stage() == Stage.FOUND || r.stage() == Stage.ANALYSED;
  }

  private static WatchedRevision revision(ResultSet r) throws SQLException {
    return new WatchedRevision(originOf(r), r.getString(7), Stage.of(r.getString(8)), r.getInt(9), text(r, 10), text(r, 11));
  }

  private static Origin originOf(ResultSet r) throws SQLException {
    return new Origin(r.getString(1), r.getLong(2), r.getString(3), r.getLong(4), r.getInt(5), r.getString(6), r.getString(7));
  }

  /** Notes how far the work on a revision is. */
  public void reached(Origin o, Stage stage) {
    db.transaction(
        () -> db.run("UPDATE watched_revision SET stage = ?, attempts = 0, problem = NULL " + THIS_REVISION, stage.word(), o.server(),
            o.project(), o.revision()));
  }

  /** Notes that the analysis of a revision has ended. */
  public void analysed(Origin o, String analysis) {
    db.transaction(() -> db.run("UPDATE watched_revision SET stage = ?, analysis = ?, attempts = 0, problem = NULL " + THIS_REVISION,
        Stage.ANALYSED.word(), analysis, o.server(), o.project(), o.revision()));
  }

  /** Notes that the work on a revision ends here without an answer. */
  public void gaveUp(Origin o, String problem) {
    db.transaction(
        () -> db.run("UPDATE watched_revision SET stage = ?, problem = ? " + THIS_REVISION, Stage.GIVEN_UP.word(), problem, o.server(),
            o.project(), o.revision()));
  }

  /** Notes that work on a revision failed; returns how often by now. */
  public int attempted(Origin o, String problem) {
    return db.transaction(() -> {
      db.run("UPDATE watched_revision SET attempts = attempts + 1, problem = ? " + THIS_REVISION, problem, o.server(), o.project(),
          o.revision());
      return db.one("SELECT attempts FROM watched_revision " + THIS_REVISION, r -> r.getInt(1), o.server(), o.project(), o.revision())
          .orElse(0);
    });
  }

  /**
   * Notes an analysis of a revision that is to run, as the next revision of the project that belongs to the server's project. Where the
   * revision is watched and waits for its analysis, this is it.
   */
  public StoredAnalysis begin(String id, Origin o, List<StoredFile> files) {
    files.forEach(analyses::publish);
    return db.transaction(() -> {
      Optional<String> project = noted(o.server(), o.project(), o.projectName()).project();
      List<StoredFile> here = new ArrayList<>(files);
      here.set(0, files.get(0).from(o));
      StoredAnalysis added = analyses.insert(id, project, o.projectName(), here, "");
      db.run("UPDATE served_project SET project = ? " + THIS_PROJECT, added.project(), o.server(), o.project());
      db.run("UPDATE watched_revision SET analysis = ? " + THIS_REVISION + " AND stage = ?", id, o.server(), o.project(),
          o.revision(), Stage.FOUND.word());
      return added;
    });
  }

  /** As {@link Analyses#add}, of models some of which come from servers; their projects there become known. */
  public StoredAnalysis beginTogether(String id, Optional<String> project, String title, List<StoredFile> files) {
    return db.transaction(() -> {
      for (StoredFile f : files) {
        if (f.origin().isPresent()) {
          noted(f.origin().get().server(), f.origin().get().project(), f.origin().get().projectName());
        }
      }
      return analyses.insert(id, project, title, files, "");
    });
  }

  /** Notes the size of a model of an analysis, once it is here, and lets others have it. */
  public void arrived(String analysis, StoredFile file) {
    analyses.publish(file);
    db.transaction(() -> db.run("UPDATE file SET bytes = ? WHERE analysis = ? AND path = ?", file.bytes(), analysis,
        analyses.stored(file.path())));
  }

  /** Where the model of an analysis comes from, if it is one alone and from a server. */
  public Optional<Origin> origin(String analysis) {
    return db.read(() -> db.one("SELECT f.server, f.served, p.name, f.served_revision, f.number, f.comment, f.checked_in FROM file f"
        + " JOIN analysis a ON a.id = f.analysis AND a.numbering = 'server' JOIN served_project p ON p.server = f.server AND"
        + " p.served = f.served"
        + " WHERE f.analysis = ?", Watches::originOf, analysis));
  }

  /** The newest analysis of a revision that has a result. */
  public Optional<String> done(String server, long served, long revision) {
    return newest("f.served_revision = ?", server, served, revision).map(Done::analysis);
  }

  /** The newest revision before this one that was analysed, with its result. */
  public Optional<Done> before(Origin o) {
    return newest("f.served_revision < ?", o.server(), o.project(), o.revision());
  }

  /** A revision and the analysis that has its result. */
  public record Done(Origin origin, String analysis) {
  }

  /** Among the analyses of one revision alone, without a roof system of its own. */
  private Optional<Done> newest(String condition, String server, long served, long revision) {
    return db.transaction(() -> db.one(
        "SELECT f.server, f.served, p.name, f.served_revision, f.number, f.comment, f.checked_in, f.analysis FROM file f"
            + " JOIN analysis a ON a.id = f.analysis AND a.state = 'done' AND a.numbering = 'server'"
            + " JOIN served_project p ON p.server = f.server AND p.served = f.served"
            + " WHERE NOT EXISTS (SELECT 1 FROM file g WHERE g.analysis = f.analysis AND g.place > 0) AND f.server = ? AND"
            + " f.served = ? AND "
            + condition
            + " ORDER BY f.served_revision DESC, a.revision DESC LIMIT 1",
        r -> new Done(originOf(r), r.getString(8)),
        server, served, revision));
  }
}
