package org.seamledger.ledger;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.stream.IntStream;

/** Lists what a new result holds, and brings what people said about the revision before over to it. */
final class ReviewCarryOver {

  private final Database db;

  ReviewCarryOver(Database db) {
    this.db = db;
  }

  /** Makes the junctions and findings of a result known, so that people can say something about each. */
  void index(String analysis, ResultOutline outline) throws SQLException {
    List<String> junctions = new ArrayList<>(new LinkedHashSet<>(outline.junctions().stream().map(LedgerReader.Line::id).toList()));
    db.each("INSERT INTO junction VALUES(?,?)", junctions, (s, id) -> {
      s.setString(1, analysis);
      s.setString(2, id);
    });
    List<String> findings = outline.findingIds();
    List<Integer> places = IntStream.range(0, findings.size()).boxed().toList();
    db.each("INSERT INTO finding(analysis, id, place) VALUES(?,?,?)", places, (s, place) -> {
      s.setString(1, analysis);
      s.setString(2, findings.get(place));
      s.setInt(3, place);
    });
  }

  /**
   * Lists the findings of a result that takes the place of another for the same junctions. What people said of a finding that is not in
   * it any more is kept unseen, for the day when the finding comes back.
   */
  void reindex(String analysis, ResultOutline outline) throws SQLException {
    db.run("UPDATE finding SET place = -1 WHERE analysis = ?", analysis);
    List<String> findings = outline.findingIds();
    for (int place = 0; place < findings.size(); place++) {
      if (db.run("UPDATE finding SET place = ? WHERE analysis = ? AND id = ?", place, analysis, findings.get(place)) == 0) {
        db.run("INSERT INTO finding(analysis, id, place) VALUES(?,?,?)", analysis, findings.get(place), place);
      }
    }
    db.run("DELETE FROM finding WHERE analysis = ? AND place < 0 AND version = 0", analysis);
  }

  /**
   * Reviews stay as they are where a junction did not change; where it did, what was {@code checked} becomes {@code recheck}, and the
   * rest of the review is kept. A kind or detail chosen by hand stays in force unless what it was chosen for changed: the kind or detail by
   * the rules, the line's length or place. Marks and comments of findings follow the findings that the new result still has.
   */
  void carry(String before, ResultOutline old, String after, ResultOutline now) throws SQLException {
    for (Comparison.Pair pair : Comparison.of(old, now).pairs()) {
      boolean changed = !pair.changes().isEmpty();
      SiteRecords.carry(db, before, pair.before().id(), after, pair.after().id());
      int reviewed = db.run(
          "INSERT INTO review SELECT ?, ?, CASE WHEN ? AND state = 'checked' THEN 'recheck' ELSE state END, note, kind, detail, reason,"
              + " 1, 1, updated FROM review WHERE analysis = ? AND junction = ?",
          after, pair.after().id(), changed, before, pair.before().id());
      if (reviewed == 1) {
        carryDecision(before, after, pair);
      }
    }
    db.run(
        "UPDATE finding SET (state, reason, accepted_by, accepted_at, assignee, version, updated) ="
            + " (SELECT o.state, o.reason, o.accepted_by, o.accepted_at, o.assignee, 1, o.updated FROM finding o"
            + " WHERE o.analysis = ? AND o.id = finding.id) WHERE analysis = ?"
            + " AND id IN (SELECT id FROM finding WHERE analysis = ? AND version > 0)",
        before, after, before);
    db.run("INSERT INTO comment(analysis, finding, author, text, created) SELECT ?, c.finding, c.author, c.text, c.created FROM comment c"
        + " JOIN finding f ON f.analysis = ? AND f.id = c.finding WHERE c.analysis = ? ORDER BY c.id", after, after, before);
  }

  /** Marks a decision that came over, but not to the line that it was made for; one that waited for a look still waits. */
  private void carryDecision(String before, String after, Comparison.Pair pair) throws SQLException {
    boolean changed = pair.changes().stream().anyMatch(List.of("kind", "detail", "length", "place")::contains);
    if (changed) {
      db.run("INSERT INTO stale(analysis, junction) SELECT analysis, junction FROM review WHERE analysis = ? AND junction = ?"
          + " AND (kind <> '' OR detail <> '')", after, pair.after().id());
    } else {
      db.run("INSERT INTO stale(analysis, junction) SELECT ?, ? FROM stale WHERE analysis = ? AND junction = ?", after, pair.after().id(),
          before, pair.before().id());
    }
  }
}
