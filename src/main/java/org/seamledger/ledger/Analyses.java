package org.seamledger.ledger;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.zip.GZIPOutputStream;

/** Projects, their analyses and the results of these. */
public final class Analyses {

  private static final SecureRandom RANDOM = new SecureRandom();
  private static final String COLUMNS = "SELECT id, project, revision, state, title, created, finished, problem_code, problem FROM analysis ";

  private final Database db;
  private final Carrier carrier;

  Analyses(Database db) {
    this.db = db;
    this.carrier = new Carrier(db);
  }

  /** A fresh id of 128 random bits, lower-case hexadecimal. */
  public static String newId() {
    byte[] bits = new byte[16];
    RANDOM.nextBytes(bits);
    return HexFormat.of().formatHex(bits);
  }

  static String now() {
    return Instant.now().truncatedTo(ChronoUnit.MILLIS).toString();
  }

  /**
   * Notes an analysis that is to run.
   *
   * @param project an existing project's id, or empty to begin one named like the title
   * @param origin what identifies the input where it comes from the command line, or empty
   */
  public Analysis add(String id, Optional<String> project, String title, List<StoredFile> files, String origin) {
    return db.transaction(() -> insert(id, project, title, files, origin));
  }

  /** {@link #add} within a transaction that goes on. */
  Analysis insert(String id, Optional<String> project, String title, List<StoredFile> files, String origin) throws SQLException {
    String owner = project.isPresent() ? requireProject(project.get()).id() : insertProject(title).id();
    int revision = db.one("SELECT COALESCE(MAX(revision), 0) + 1 FROM analysis WHERE project = ?", r -> r.getInt(1), owner).orElseThrow();
    db.run("INSERT INTO analysis(id, project, revision, state, title, created, origin) VALUES(?,?,?,?,?,?,?)",
        id, owner, revision, State.QUEUED.word(), title, now(), origin);
    for (int i = 0; i < files.size(); i++) {
      StoredFile f = files.get(i);
      db.run("INSERT INTO file VALUES(?,?,?,?,?,?)", id, i, f.name(), f.path(), f.bytes(), f.role());
      if (f.placement().isPresent()) {
        db.run("INSERT INTO placement VALUES(?,?,?)", id, i, f.placement().get());
      }
    }
    return required(id);
  }

  public Project addProject(String name) {
    return db.transaction(() -> insertProject(name));
  }

  private Project insertProject(String name) throws SQLException {
    String id = newId();
    db.run("INSERT INTO project VALUES(?,?,?)", id, name, now());
    return requireProject(id);
  }

  public Project project(String id) {
    return db.transaction(() -> requireProject(id));
  }

  public List<Project> projects() {
    return db.transaction(() -> db.list("SELECT p.id, p.name, p.created, (SELECT COUNT(*) FROM analysis a WHERE a.project = p.id)"
        + " FROM project p ORDER BY p.created DESC, p.id", Analyses::projectOf));
  }

  private Project requireProject(String id) throws SQLException {
    return db.one("SELECT p.id, p.name, p.created, (SELECT COUNT(*) FROM analysis a WHERE a.project = p.id)"
        + " FROM project p WHERE p.id = ?", Analyses::projectOf, id)
        .orElseThrow(() -> new LedgerException(LedgerException.Reason.NOT_FOUND, "There is no such project."));
  }

  private static Project projectOf(ResultSet r) throws SQLException {
    return new Project(r.getString(1), r.getString(2), r.getString(3), r.getInt(4));
  }

  /** Gives a project another name. */
  public Project rename(String id, String name) {
    return db.transaction(() -> {
      requireProject(id);
      db.run("UPDATE project SET name = ? WHERE id = ?", name, id);
      return requireProject(id);
    });
  }

  /** All analyses, newest first. */
  public List<Analysis> list() {
    return db.transaction(() -> withFiles(db.list(COLUMNS + "ORDER BY created DESC, id", this::row)));
  }

  /** The analyses of one project, by revision. */
  public List<Analysis> ofProject(String project) {
    return db.transaction(() -> {
      requireProject(project);
      return withFiles(db.list(COLUMNS + "WHERE project = ? ORDER BY revision", this::row, project));
    });
  }

  public Analysis get(String id) {
    return db.transaction(() -> required(id));
  }

  /** The newest analysis with this origin, whatever its state. */
  public Optional<Analysis> byOrigin(String origin) {
    return db.transaction(() -> {
      Optional<Analysis> found =
          db.one(COLUMNS + "WHERE origin = ? ORDER BY created DESC LIMIT 1", this::row, origin);
      return found.isPresent() ? Optional.of(required(found.get().id())) : found;
    });
  }

  /** The project whose newest analysis reads exactly these files, in this order. */
  public Optional<String> byPaths(List<String> paths) {
    return list().stream()
        .filter(a -> a.files().stream().filter(f -> f.role().equals("model")).map(StoredFile::path).toList().equals(paths))
        .map(Analysis::project).findFirst();
  }

  /** Those that were waiting or running when the process ended: they are waiting again. */
  public List<Analysis> unfinished() {
    return db.transaction(() -> {
      db.run("UPDATE analysis SET state = ? WHERE state = ?", State.QUEUED.word(), State.RUNNING.word());
      return withFiles(db.list(COLUMNS + "WHERE state = ? ORDER BY created, id", this::row, State.QUEUED.word()));
    });
  }

  private Analysis required(String id) throws SQLException {
    Analysis a = db.one(COLUMNS + "WHERE id = ?", this::row, id)
        .orElseThrow(() -> new LedgerException(LedgerException.Reason.NOT_FOUND, "There is no such analysis."));
    return withFiles(List.of(a)).get(0);
  }

  private Analysis row(ResultSet r) throws SQLException {
    return new Analysis(r.getString(1), r.getString(2), r.getInt(3), State.of(r.getString(4)), r.getString(5), List.of(),
        r.getString(6), Optional.ofNullable(r.getString(7)), Optional.ofNullable(r.getString(8)), Optional.ofNullable(r.getString(9)));
  }

  private List<Analysis> withFiles(List<Analysis> all) throws SQLException {
    List<Analysis> full = new ArrayList<>();
    for (Analysis a : all) {
      List<StoredFile> files = db.list("SELECT f.name, f.path, f.bytes, f.role, p.movement FROM file f"
          + " LEFT JOIN placement p ON p.analysis = f.analysis AND p.place = f.place WHERE f.analysis = ? ORDER BY f.place",
          r -> new StoredFile(r.getString(1), r.getString(2), r.getLong(3), r.getString(4), Optional.ofNullable(r.getString(5))), a.id());
      full.add(new Analysis(a.id(), a.project(), a.revision(), a.state(), a.title(), files, a.created(), a.finished(),
          a.problemCode(), a.problem()));
    }
    return full;
  }

  /** Notes that it runs now; false where it was cancelled or removed meanwhile. */
  public boolean begin(String id) {
    return db.transaction(() -> db.run("UPDATE analysis SET state = ? WHERE id = ? AND state = ?",
        State.RUNNING.word(), id, State.QUEUED.word()) == 1);
  }

  /** Notes that it ended without a result; nothing happens where it has ended already. */
  public boolean end(String id, State state, String code, String problem) {
    return db.transaction(() -> db.run("UPDATE analysis SET state = ?, finished = ?, problem_code = ?, problem = ?"
        + " WHERE id = ? AND state IN ('queued','running')", state.word(), now(), code, problem, id) == 1);
  }

  /**
   * Stores a result by the rules alone, whole or not at all, and carries the reviews of the revision before over to it.
   *
   * @param json the plain JSON of the result
   * @throws IOException where it is not a result: that is a fault of the program, not of its input
   */
  public void complete(String id, Path json) throws IOException {
    complete(id, json, Optional.empty());
  }

  /**
   * As {@link #complete(String, Path)}, and keeps the report for people beside it.
   *
   * @param report plain text
   */
  public void complete(String id, Path json, Optional<String> report) throws IOException {
    StoredLedger stored = compress(json);
    Outline outline;
    try (InputStream in = Files.newInputStream(json)) {
      outline = Outline.read(in);
    }
    db.transaction(() -> {
      int touched = db.run("UPDATE analysis SET state = ?, finished = ? WHERE id = ? AND state = ?",
          State.DONE.word(), now(), id, State.RUNNING.word());
      if (touched == 1) {
        db.run("INSERT INTO ledger VALUES(?,?,?,?)", id, stored.sha256(), stored.bytes(), stored.gzip());
        if (report.isPresent()) {
          db.run("INSERT INTO report VALUES(?,?,?)", id, "", report.get());
        }
        carrier.index(id, outline);
        Optional<String> before = previous(id);
        if (before.isPresent()) {
          // By what the models say: a line is not another because somebody decided about it.
          StoredLedger old = Choices.byRules(db, before.get()).orElse(ledgerOf(before.get()));
          carrier.carry(before.get(), Outline.of(old), id, outline);
        }
      }
      return null;
    });
  }

  private Optional<String> previous(String id) throws SQLException {
    return db.one("SELECT b.id FROM analysis a JOIN analysis b ON b.project = a.project AND b.revision < a.revision AND b.state = 'done'"
        + " WHERE a.id = ? ORDER BY b.revision DESC LIMIT 1", r -> r.getString(1), id);
  }

  static StoredLedger compress(Path json) throws IOException {
    MessageDigest hash = Digests.sha256();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (InputStream in = new DigestInputStream(Files.newInputStream(json), hash);
        GZIPOutputStream out = new GZIPOutputStream(bytes, 1 << 16)) {
      in.transferTo(out);
    }
    return new StoredLedger(HexFormat.of().formatHex(hash.digest()), Files.size(json), bytes.toByteArray());
  }

  /** The result of an analysis that is done. */
  public StoredLedger ledger(String id) {
    return db.transaction(() -> {
      Analysis a = required(id);
      if (a.state() != State.DONE) {
        throw new LedgerException(LedgerException.Reason.CONFLICT, "This analysis has no result: it is " + a.state().word() + ".");
      }
      return ledgerOf(id);
    });
  }

  /** The hash of a result, without reading it. */
  public String ledgerHash(String id) {
    return db.transaction(() -> {
      Analysis a = required(id);
      return db.one("SELECT sha256 FROM ledger WHERE analysis = ?", r -> r.getString(1), id)
          .orElseThrow(() -> new LedgerException(LedgerException.Reason.CONFLICT,
              "This analysis has no result: it is " + a.state().word() + "."));
    });
  }

  /** The report for people, where one was kept with the result that is in force. */
  public Optional<String> report(String id) {
    return db.transaction(() -> db.one("SELECT text FROM report WHERE analysis = ? AND decisions = COALESCE((SELECT decisions FROM by_rules"
        + " WHERE analysis = ?), '')", r -> r.getString(1), id, id));
  }

  private StoredLedger ledgerOf(String id) throws SQLException {
    return db.one("SELECT sha256, bytes, gzip FROM ledger WHERE analysis = ?",
        r -> new StoredLedger(r.getString(1), r.getLong(2), r.getBytes(3)), id)
        .orElseThrow(() -> new LedgerException(LedgerException.Reason.NOT_FOUND, "This analysis has no result."));
  }

  /** What differs from one result to another. */
  public Comparison compare(String before, String after) {
    return Comparison.of(Outline.of(ledger(before)), Outline.of(ledger(after)));
  }

  /** Removes an analysis that has ended, with everything said about it; its project too where it was the last. */
  public void remove(String id) {
    db.transaction(() -> {
      Analysis a = required(id);
      if (!a.state().isFinal()) {
        throw new LedgerException(LedgerException.Reason.CONFLICT, "This analysis is still going on; cancel it first.");
      }
      db.run("DELETE FROM analysis WHERE id = ?", id);
      db.run("DELETE FROM project WHERE id = ? AND NOT EXISTS (SELECT 1 FROM analysis WHERE project = ?)", a.project(), a.project());
      return null;
    });
  }

  /** Number of analyses by state. */
  public Map<String, Long> counts() {
    Map<String, Long> counts = new TreeMap<>();
    for (State s : State.values()) {
      counts.put(s.word(), 0L);
    }
    db.transaction(() -> db.list("SELECT state, COUNT(*) FROM analysis GROUP BY state",
        r -> counts.put(r.getString(1), r.getLong(2))));
    return counts;
  }
}
