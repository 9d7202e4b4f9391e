package org.seamledger.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.seamledger.ledger.Revision.Numbering;

/** Which number an analysis gets, and the files that it follows from. */
final class Numbers {

  private final Database db;
  private final Optional<ModelFolder> models;

  /** @param models the folder that paths are stored below, where several processes share one */
  Numbers(Database db, Optional<ModelFolder> models) {
    this.db = db;
    this.models = models;
  }

  /** The form in which storage has a path of this process. */
  String stored(String path) {
    return models.map(m -> m.stored(path)).orElse(path);
  }

  /** Lets other processes have a file that this one has written. */
  void publish(StoredFile file) {
    try {
      if (models.isPresent() && Files.exists(Path.of(file.path()))) {
        models.get().publish(Path.of(file.path()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String found(String stored) {
    return models.map(m -> m.found(stored)).orElse(stored);
  }

  /**
   * The revision that an analysis is in its project.
   *
   * @param fresh whether the project begins with it
   */
  Revision next(String project, boolean fresh, List<StoredFile> files) throws SQLException {
    Optional<Origin> alone = alone(files);
    boolean isServed = fresh ? alone.isPresent() : db.one("SELECT 1 FROM served_project WHERE project = ?", r -> 1, project).isPresent();
    if (!isServed) {
      return new Revision(Numbering.OWN, 1 + highest(project), 1, Optional.empty());
    }
    boolean isTheirs =
        alone.isPresent() && (fresh || db.one("SELECT 1 FROM served_project WHERE project = ? AND server = ? AND served = ?", r -> 1,
            project, alone.get().server(), alone.get().project()).isPresent());
    int number = isTheirs ? alone.get().number() : Math.max(1, highest(project));
    int run = db.one("SELECT COALESCE(MAX(run), 0) + 1 FROM analysis WHERE project = ? AND number = ?", r -> r.getInt(1), project, number)
        .orElseThrow();
    return new Revision(isTheirs ? Numbering.SERVER : Numbering.UPLOAD, number, run, isTheirs ? alone : Optional.empty());
  }

  private int highest(String project) throws SQLException {
    return db.one("SELECT COALESCE(MAX(number), 0) FROM analysis WHERE project = ?", r -> r.getInt(1), project).orElseThrow();
  }

  /** Where the only model comes from, if there is one alone and it comes from a server. */
  private static Optional<Origin> alone(List<StoredFile> files) {
    List<StoredFile> models = files.stream().filter(StoredFile::isModel).toList();
    return models.size() == 1 ? models.get(0).origin() : Optional.empty();
  }

  /** A revision as it is stored, with its origin. */
  static Revision withOrigin(Revision r, List<StoredFile> files) {
    return r.numbering() == Numbering.SERVER ? new Revision(r.numbering(), r.number(), r.run(), alone(files)) : r;
  }

  /** Where the models come from, whatever their revisions: two analyses with the same sources are of one building. */
  static List<String> sources(List<StoredFile> files) {
    return files.stream().filter(StoredFile::isModel)
        .map(f -> f.origin().map(o -> "server " + o.server() + "\n" + o.project()).orElse("file " + f.name())).toList();
  }

  /** The revisions that have a result, for people. */
  static String list(List<StoredAnalysis> all) {
    String numbers = all.stream().filter(a -> a.state() == State.DONE).map(a -> a.revision().label()).collect(Collectors.joining("; "));
    return numbers.isEmpty() ? "none" : numbers;
  }

  void insert(String analysis, int place, StoredFile f) throws SQLException {
    db.run("INSERT INTO file(analysis, place, name, path, bytes, role) VALUES(?,?,?,?,?,?)", analysis, place, f.name(),
        stored(f.path()), f.bytes(),
        f.role());
    if (f.origin().isPresent()) {
      Origin o = f.origin().get();
      db.run(
          "UPDATE file SET server = ?, served = ?, served_revision = ?, number = ?, comment = ?, checked_in = ? WHERE analysis ="
              + " ? AND place = ?",
          o.server(), o.project(), o.revision(), o.number(), o.comment(), o.checkedIn(), analysis, place);
    }
    if (f.placement().isPresent()) {
      db.run("INSERT INTO placement VALUES(?,?,?)", analysis, place, f.placement().get());
    }
  }

  /** The files of some analyses, by id, each list in its order. */
  Map<String, List<StoredFile>> files(Collection<String> analyses) throws SQLException {
    Map<String, List<StoredFile>> found = new HashMap<>();
    db.among(
        "SELECT f.name, f.path, f.bytes, f.role, f.server, f.served, p.name, f.served_revision, f.number, f.comment, f.checked_in,"
            + " m.movement, f.analysis FROM file f LEFT JOIN served_project p ON p.server = f.server AND p.served = f.served"
            + " LEFT JOIN placement m ON m.analysis = f.analysis AND m.place = f.place WHERE f.analysis IN ? ORDER BY f.place",
        analyses, r -> found.computeIfAbsent(r.getString(13), a -> new ArrayList<>()).add(file(r)));
    return found;
  }

  private StoredFile file(ResultSet r) throws SQLException {
    StoredFile file = new StoredFile(r.getString(1), found(r.getString(2)), r.getLong(3), r.getString(4))
        .placed(Optional.ofNullable(r.getString(12)));
    return r.getString(5) == null ? file : file.from(new Origin(r.getString(5), r.getLong(6), r.getString(7), r.getLong(8), r.getInt(9),
        r.getString(10), r.getString(11)));
  }
}
