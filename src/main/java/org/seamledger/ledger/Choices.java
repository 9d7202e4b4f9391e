package org.seamledger.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.seamledger.detail.Decision;

/**
 * Kinds and details that people chose in their reviews, and the results that follow them.
 *
 * <p>An analysis is first computed by the rules alone. As soon as somebody decides, it is computed again with the decisions, in place: its
 * id, its junctions and its reviews stay. The result by the rules alone is kept beside it, to compare with, to carry reviews over to the
 * next revision by what the model says and not by what people said, and to be put back when the last decision is taken back.
 */
public final class Choices {

  private static final String IN_FORCE = "SELECT r.analysis, r.junction, r.kind, r.detail, r.reason FROM review r"
      + " WHERE r.analysis IN ? AND (r.kind <> '' OR r.detail <> '')"
      + " AND NOT EXISTS (SELECT 1 FROM stale s WHERE s.analysis = r.analysis AND s.junction = r.junction) ORDER BY r.junction";

  private final Database db;
  private final ReviewCarryOver carrier;

  Choices(Database db, ReviewCarryOver carrier) {
    this.db = db;
    this.carrier = carrier;
  }

  /**
   * Decisions of one analysis.
   *
   * @param inForce by junction id; without those that were carried over to a junction that changed
   * @param stale how many of these there are: somebody has to look at them again
   * @param followed whether the stored result follows those in force
   */
  public record Standing(List<Decision> inForce, int stale, boolean followed) {
    public Standing {
      inForce = List.copyOf(inForce);
    }

    /** The same for the same decisions, so that a result tells what it was made with. */
    String digest() {
      return Choices.digest(inForce);
    }
  }

  /** How the decisions of an analysis stand. */
  public Standing of(String analysis) {
    return db.read(() -> {
      requireAnalysis(analysis);
      return standing(analysis);
    });
  }

  /** How the decisions of some analyses stand, by id; of one that was removed there are none. */
  public Map<String, Standing> of(Collection<String> analyses) {
    return db.read(() -> standing(analyses));
  }

  private Standing standing(String analysis) throws SQLException {
    return standing(List.of(analysis)).get(analysis);
  }

  private Map<String, Standing> standing(Collection<String> analyses) throws SQLException {
    Map<String, List<Decision>> inForce = new HashMap<>();
    db.among(IN_FORCE, analyses, r -> inForce.computeIfAbsent(r.getString(1), a -> new ArrayList<>())
        .add(new Decision(r.getString(2), r.getString(3), r.getString(4), r.getString(5))));
    Map<String, Integer> stale = new HashMap<>();
    db.among("SELECT analysis, COUNT(*) FROM stale WHERE analysis IN ? GROUP BY analysis", analyses,
        r -> stale.put(r.getString(1), r.getInt(2)));
    Map<String, String> followed = new HashMap<>();
    db.among("SELECT analysis, decisions FROM by_rules WHERE analysis IN ?", analyses, r -> followed.put(r.getString(1), r.getString(2)));
    Map<String, Standing> all = new LinkedHashMap<>();
    for (String id : analyses) {
      List<Decision> decisions = inForce.getOrDefault(id, List.of());
      all.put(id,
          new Standing(decisions, stale.getOrDefault(id, 0), digest(decisions).equals(followed.getOrDefault(id, ""))));
    }
    return all;
  }

  /** Ids of the analyses whose results don't follow their decisions yet: a process ended before they could. */
  public List<String> behind() {
    return db.transaction(() -> standing(db.list("SELECT id FROM analysis WHERE state = 'done' AND (id IN (SELECT analysis FROM review"
        + " WHERE kind <> '' OR detail <> '') OR id IN (SELECT analysis FROM by_rules)) ORDER BY created, id", r -> r.getString(1)))
        .entrySet()
        .stream().filter(e -> !e.getValue().followed()).map(Map.Entry::getKey).toList());
  }

  /**
   * Puts a result that was computed with decisions in the place of the one before, whole or not at all; nothing happens where the analysis
   * was removed meanwhile.
   *
   * @param with what it was computed with; with none the result by the rules alone is put back, and no file is needed
   * @param json the plain JSON of the result
   * @param report for users, to keep with the result
   */
  public void complete(String analysis, Standing with, Optional<Path> json, Optional<String> report) throws IOException {
    if (json.isEmpty()) {
      db.transaction(() -> {
        restore(analysis);
        return null;
      });
      return;
    }
    StoredLedger stored = Analyses.compress(json.get());
    ResultOutline outline;
    try (InputStream in = Files.newInputStream(json.get())) {
      outline = ResultOutline.read(in);
    }
    db.transaction(() -> {
      if (db.one("SELECT 1 FROM by_rules WHERE analysis = ?", r -> 1, analysis).isEmpty()) {
        db.run("INSERT INTO by_rules(analysis, decisions, sha256, bytes, gzip) SELECT analysis, '', sha256, bytes, gzip FROM ledger"
            + " WHERE analysis = ?", analysis);
      }
      if (db.run("UPDATE ledger SET sha256 = ?, bytes = ?, gzip = ? WHERE analysis = ?", stored.sha256(), stored.bytes(), stored.gzip(),
          analysis) == 1) {
        db.run("UPDATE by_rules SET decisions = ? WHERE analysis = ?", with.digest(), analysis);
        db.run("DELETE FROM report WHERE analysis = ? AND decisions <> ''", analysis);
        if (report.isPresent()) {
          db.run("INSERT INTO report VALUES(?,?,?)", analysis, with.digest(), report.get());
        }
        carrier.reindex(analysis, outline);
      }
      return null;
    });
  }

  private void restore(String analysis) throws SQLException {
    Optional<StoredLedger> rules = byRules(db, analysis);
    if (rules.isPresent()) {
      StoredLedger l = rules.get();
      db.run("UPDATE ledger SET sha256 = ?, bytes = ?, gzip = ? WHERE analysis = ?", l.sha256(), l.bytes(), l.gzip(), analysis);
      db.run("DELETE FROM by_rules WHERE analysis = ?", analysis);
      carrier.reindex(analysis, ResultOutline.of(l));
    }
  }

  /** The result by the rules alone, where decisions changed it. */
  static Optional<StoredLedger> byRules(Database db, String analysis) throws SQLException {
    return db.one("SELECT sha256, bytes, gzip FROM by_rules WHERE analysis = ?",
        r -> new StoredLedger(r.getString(1), r.getLong(2), r.getBytes(3)), analysis);
  }

  /** What the decisions of an analysis change in its result. */
  public Comparison compareWithRules(String analysis) {
    return db.transaction(() -> {
      requireAnalysis(analysis);
      StoredLedger now = db.one("SELECT sha256, bytes, gzip FROM ledger WHERE analysis = ?",
          r -> new StoredLedger(r.getString(1), r.getLong(2), r.getBytes(3)), analysis)
          .orElseThrow(() -> new LedgerException(LedgerException.Reason.CONFLICT, "This analysis has no result yet."));
      return Comparison.of(ResultOutline.of(byRules(db, analysis).orElse(now)), ResultOutline.of(now));
    });
  }

  /** Decisions of an analysis about junctions that another result no longer has, by junction id: they were not carried over. */
  public List<Decision> gone(String before, List<Comparison.Line> removed) {
    return of(before).inForce().stream().filter(d -> removed.stream().anyMatch(l -> l.id().equals(d.junction()))).toList();
  }

  private static String digest(List<Decision> decisions) {
    return decisions.isEmpty() ? "" : Digests.shortId(decisions.stream()
        .map(d -> String.join("\u0000", d.junction(), d.kind(), d.detail(), d.reason())).collect(Collectors.joining("\n")));
  }

  private void requireAnalysis(String analysis) throws SQLException {
    if (db.one("SELECT 1 FROM analysis WHERE id = ?", r -> 1, analysis).isEmpty()) {
      throw new LedgerException(LedgerException.Reason.NOT_FOUND, "There is no such analysis.");
    }
  }
}
