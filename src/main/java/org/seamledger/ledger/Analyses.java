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
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.zip.GZIPOutputStream;
import org.seamledger.finding.Sha256;

/** Projects, their analyses and the results of these. */
public final class Analyses {

  /** Deaths of the process during one analysis until that is taken for the reason. */
  static final int MOST_DEATHS = 2;
  static final String DIED = "analysis/died";
  static final String DIED_WORDS = "The program ended " + MOST_DEATHS + " times while this analysis ran, so it is not begun again. Where"
      + " models aren't the reason, send them again.";
  private static final SecureRandom RANDOM = new SecureRandom();
  /** Always with milliseconds, so that texts are in the order of time. */
  private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'").withZone(ZoneOffset.UTC);
  private static final String COLUMNS =
      "SELECT id, project, number, run, numbering, state, title, created, finished, problem_code, problem FROM analysis ";

  private final Database db;
  private final ReviewCarryOver carrier;
  private final Numbers numbers;

  Analyses(Database db, Optional<ModelFolder> models) {
    this.db = db;
    this.carrier = new ReviewCarryOver(db);
    this.numbers = new Numbers(db, models);
  }

  /** The form in which storage has a path of this process. */
  String stored(String path) {
    return numbers.stored(path);
  }

  void publish(StoredFile file) {
    numbers.publish(file);
  }

  /** A fresh id of 128 random bits, lower-case hexadecimal. */
  public static String newId() {
    byte[] bits = new byte[16];
    RANDOM.nextBytes(bits);
    return HexFormat.of().formatHex(bits);
  }

  static String now() {
    return WHEN.format(Instant.now());
  }

  /**
   * Notes an analysis that is to run.
   *
   * @param project an existing project's id, or empty to begin one named like the title
   * @param origin what identifies the input where it comes from the command line, or empty
   */
  public StoredAnalysis add(String id, Optional<String> project, String title, List<StoredFile> files, String origin) {
    return db.transaction(() -> insert(id, project, title, files, origin));
  }

  /** {@link #add} within a transaction that goes on. */
  StoredAnalysis insert(String id, Optional<String> project, String title, List<StoredFile> files, String origin) throws SQLException {
    String owner = project.isPresent() ? requireProject(project.get()).id() : insertProject(title).id();
    Revision revision = numbers.next(owner, project.isEmpty(), files);
    db.run("INSERT INTO analysis(id, project, revision, number, run, numbering, state, title, created, origin)"
        + " VALUES(?, ?, (SELECT COALESCE(MAX(revision), 0) + 1 FROM analysis WHERE project = ?), ?,?,?,?,?,?,?)",
        id, owner, owner, revision.number(), revision.run(), revision.numbering().word(), State.QUEUED.word(), title, now(), origin);
    for (int i = 0; i < files.size(); i++) {
      numbers.insert(id, i, files.get(i));
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
    return db.read(() -> requireProject(id));
  }

  public List<Project> projects() {
    return db.read(() -> db.list("SELECT p.id, p.name, p.created, (SELECT COUNT(*) FROM analysis a WHERE a.project = p.id)"
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
  public List<StoredAnalysis> list() {
    return db.read(() -> withFiles(db.list(COLUMNS + "ORDER BY created DESC, id", this::row)));
  }

  /** Some of all analyses, newest first, after as many newer ones. */
  public List<StoredAnalysis> list(int most, int after) {
    return db.read(() -> withFiles(db.list(COLUMNS + "ORDER BY created DESC, id LIMIT ? OFFSET ?", this::row, most, after)));
  }

  /** Number of all analyses. */
  public long count() {
    return db.read(() -> db.one("SELECT COUNT(*) FROM analysis", r -> r.getLong(1)).orElse(0L));
  }

  /** The analyses of one project, in the order of their revisions, whenever they were made. */
  public List<StoredAnalysis> ofProject(String project) {
    return db.read(() -> {
      requireProject(project);
      return withFiles(db.list(COLUMNS + "WHERE project = ? ORDER BY number, run", this::row, project));
    });
  }

  public StoredAnalysis get(String id) {
    return db.read(() -> required(id));
  }

  /** Whether an analysis is one of a project's. */
  public boolean isOf(String id, String project) {
    return db.read(() -> db.one("SELECT 1 FROM analysis WHERE id = ? AND project = ?", r -> 1, id, project).isPresent());
  }

  /** The newest analysis with this origin, whatever its state. */
  public Optional<StoredAnalysis> byOrigin(String origin) {
    return db.transaction(() -> {
      Optional<StoredAnalysis> found =
          db.one(COLUMNS + "WHERE origin = ? ORDER BY created DESC LIMIT 1", this::row, origin);
      return found.isPresent() ? Optional.of(required(found.get().id())) : found;
    });
  }

  /** The project whose newest analysis reads exactly these files, in this order. */
  public Optional<String> byPaths(List<String> paths) {
    return list().stream()
        .filter(a -> a.files().stream().filter(StoredFile::isModel).map(StoredFile::path).toList().equals(paths))
        .map(StoredAnalysis::project).findFirst();
  }

  /** The project whose newest analysis reads models of the same projects on servers, and else files of the same names, in this order. */
  public Optional<String> bySources(List<StoredFile> files) {
    List<String> sources = Numbers.sources(files);
    return list().stream().filter(a -> Numbers.sources(a.files()).equals(sources)).map(StoredAnalysis::project).findFirst();
  }

  /** The newest analysis with a result of a project's revision by its number; that of the server where there is one. */
  public StoredAnalysis numbered(String project, int number) {
    List<StoredAnalysis> all = ofProject(project);
    return all.stream()
        .filter(a -> a.state() == State.DONE && a.revision().number() == number && a.revision().numbering() != Revision.Numbering.UPLOAD)
        .reduce((first, second) -> second)
        .orElseThrow(() -> new LedgerException(LedgerException.Reason.NOT_FOUND, "The project has no result of revision "
            + number + "; it has " + Numbers.list(all) + "."));
  }

  /**
   * Those that were waiting or running when the process ended: they are waiting again. One during which it died {@link #MOST_DEATHS} times
   * is likely to be why, and has failed.
   */
  public List<StoredAnalysis> unfinished() {
    return db.transaction(() -> {
      db.run("UPDATE analysis SET state = ?, finished = ?, problem_code = ?, problem = ? WHERE state = ? AND starts >= ?",
          State.FAILED.word(), now(), DIED, DIED_WORDS, State.RUNNING.word(), MOST_DEATHS);
      db.run("UPDATE analysis SET state = ? WHERE state = ?", State.QUEUED.word(), State.RUNNING.word());
      return withFiles(db.list(COLUMNS + "WHERE state = ? ORDER BY created, id", this::row, State.QUEUED.word()));
    });
  }

  private StoredAnalysis required(String id) throws SQLException {
    StoredAnalysis a = db.one(COLUMNS + "WHERE id = ?", this::row, id)
        .orElseThrow(() -> new LedgerException(LedgerException.Reason.NOT_FOUND, "There is no such analysis."));
    return withFiles(List.of(a)).get(0);
  }

  private StoredAnalysis row(ResultSet r) throws SQLException {
    Revision revision = new Revision(Revision.Numbering.of(r.getString(5)), r.getInt(3), r.getInt(4), Optional.empty());
    return new StoredAnalysis(r.getString(1), r.getString(2), revision, State.of(r.getString(6)), r.getString(7), List.of(),
        r.getString(8), Optional.ofNullable(r.getString(9)), Optional.ofNullable(r.getString(10)), Optional.ofNullable(r.getString(11)));
  }

  private List<StoredAnalysis> withFiles(List<StoredAnalysis> all) throws SQLException {
    List<StoredAnalysis> full = new ArrayList<>();
    Map<String, List<StoredFile>> filesOf = numbers.files(all.stream().map(StoredAnalysis::id).toList());
    for (StoredAnalysis a : all) {
      List<StoredFile> files = filesOf.getOrDefault(a.id(), List.of());
      full.add(new StoredAnalysis(a.id(), a.project(), Numbers.withOrigin(a.revision(), files), a.state(), a.title(), files, a.created(),
          a.finished(),
          a.problemCode(), a.problem()));
    }
    return full;
  }

  /** Has an analysis taken before others, or after them, where several workers take them: the higher the earlier; 0 is usual. */
  public void prioritize(String id, int priority) {
    db.transaction(() -> db.run("UPDATE analysis SET priority = ? WHERE id = ?", priority, id));
  }

  /** Notes that it runs now; false where it was cancelled or removed meanwhile. */
  public boolean begin(String id) {
    return db.transaction(() -> db.run("UPDATE analysis SET state = ?, starts = starts + 1 WHERE id = ? AND state = ?",
        State.RUNNING.word(), id, State.QUEUED.word()) == 1);
  }

  /** Notes that the process ends in good order: what runs now is not why. */
  public void pause() {
    db.transaction(() -> db.run("UPDATE analysis SET starts = starts - 1, state = ? WHERE state = ?", State.QUEUED.word(),
        State.RUNNING.word()));
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
   * @param report plain text for users, kept beside it
   * @throws IOException where it is not a result: that is a fault of the program, not of its input
   */
  public void complete(String id, Path json, Optional<String> report) throws IOException {
    StoredLedger stored = compress(json);
    ResultOutline outline;
    try (InputStream in = Files.newInputStream(json)) {
      outline = ResultOutline.read(in);
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
          carrier.carry(before.get(), ResultOutline.of(old), id, outline);
        }
      }
      return null;
    });
  }

  private Optional<String> previous(String id) throws SQLException {
    return db.one("SELECT b.id FROM analysis a JOIN analysis b ON b.project = a.project AND b.state = 'done'"
        + " AND (b.number < a.number OR b.number = a.number AND b.run < a.run) WHERE a.id = ? ORDER BY b.number DESC, b.run DESC LIMIT 1",
        r -> r.getString(1), id);
  }

  static StoredLedger compress(Path json) throws IOException {
    MessageDigest hash = Sha256.digest();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (InputStream in = new DigestInputStream(Files.newInputStream(json), hash);
        GZIPOutputStream out = new GZIPOutputStream(bytes, 1 << 16)) {
      in.transferTo(out);
    }
    return new StoredLedger(HexFormat.of().formatHex(hash.digest()), Files.size(json), bytes.toByteArray());
  }

  /** The result of an analysis that is done. */
  public StoredLedger ledger(String id) {
    return db.read(() -> {
      StoredAnalysis a = required(id);
      if (a.state() != State.DONE) {
        throw new LedgerException(LedgerException.Reason.CONFLICT, "This analysis has no result: it is " + a.state().word() + ".");
      }
      return ledgerOf(id);
    });
  }

  /** The hash of a result, without reading it. */
  public String ledgerHash(String id) {
    return db.read(() -> {
      Optional<String> hash = db.one("SELECT sha256 FROM ledger WHERE analysis = ?", r -> r.getString(1), id);
      if (hash.isEmpty()) {
        throw new LedgerException(LedgerException.Reason.CONFLICT,
            "This analysis has no result: it is " + required(id).state().word() + ".");
      }
      return hash.get();
    });
  }

  /** The hashes of the results of those of some analyses that have one, by id. */
  public Map<String, String> ledgerHashes(Collection<String> ids) {
    return db.read(() -> {
      Map<String, String> found = new HashMap<>();
      db.among("SELECT analysis, sha256 FROM ledger WHERE analysis IN ?", ids, r -> found.put(r.getString(1), r.getString(2)));
      return found;
    });
  }

  /** The report for users, where one was kept with the result that is in force. */
  public Optional<String> report(String id) {
    return db.read(() -> db.one("SELECT text FROM report WHERE analysis = ? AND decisions = COALESCE((SELECT decisions FROM by_rules"
        + " WHERE analysis = ?), '')", r -> r.getString(1), id, id));
  }

  private StoredLedger ledgerOf(String id) throws SQLException {
    return db.one("SELECT sha256, bytes, gzip FROM ledger WHERE analysis = ?",
        r -> new StoredLedger(r.getString(1), r.getLong(2), r.getBytes(3)), id)
        .orElseThrow(() -> new LedgerException(LedgerException.Reason.NOT_FOUND, "This analysis has no result."));
  }

  /** What differs from one result to another. */
  public Comparison compare(String before, String after) {
    return Comparison.of(ResultOutline.of(ledger(before)), ResultOutline.of(ledger(after)));
  }

  /** Removes an analysis that has ended, with everything said about it; its project too where it was the last. */
  public void remove(String id) {
    db.transaction(() -> {
      StoredAnalysis a = required(id);
      if (!a.state().isFinal()) {
        throw new LedgerException(LedgerException.Reason.CONFLICT, "This analysis is still going on; cancel it first.");
      }
      db.run("DELETE FROM analysis WHERE id = ?", id);
      db.run("DELETE FROM project WHERE id = ? AND NOT EXISTS (SELECT 1 FROM analysis WHERE project = ?)", a.project(), a.project());
      return null;
    });
  }

  /** How long the oldest analysis waits that waits; zero where none does. */
  public Duration oldestWaiting() {
    Optional<String> oldest = db.read(
        () -> db.one("SELECT MIN(created) FROM analysis WHERE state = 'queued'", r -> Optional.ofNullable(r.getString(1))))
        .orElse(Optional.empty());
    Duration age = oldest.map(o -> Duration.between(Instant.parse(o), Instant.now())).orElse(Duration.ZERO);
    return age.isNegative() ? Duration.ZERO : age;
  }

  /** Number of analyses by state. */
  public Map<String, Long> counts() {
    Map<String, Long> counts = new TreeMap<>();
    for (State s : State.values()) {
      counts.put(s.word(), 0L);
    }
    db.read(() -> db.list("SELECT state, COUNT(*) FROM analysis GROUP BY state",
        r -> counts.put(r.getString(1), r.getLong(2))));
    return counts;
  }
}
