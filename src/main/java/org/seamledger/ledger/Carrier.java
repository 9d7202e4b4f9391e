package org.seamledger.ledger;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.stream.IntStream;

/** Lists what a new result holds, and brings what people said about the revision before over to it. */
final class Carrier {

  private final Database db;

  Carrier(Database db) {
    this.db = db;
  }

  /** Makes the junctions and findings of a result known, so that people can say something about each. */
  void index(String analysis, Outline outline) throws SQLException {
    List<String> junctions = new ArrayList<>(new LinkedHashSet<>(outline.junctions().stream().map(Outline.Line::id).toList()));
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
   * Reviews stay as they are where a junction did not change; where it did, what was {@code checked} becomes {@code recheck}, and the
   * rest of the review is kept. Marks and comments of findings follow the findings that the new result still has.
   */
  void carry(String before, Outline old, String after, Outline now) throws SQLException {
    for (Comparison.Pair pair : Comparison.of(old, now).pairs()) {
      boolean changed = !pair.changes().isEmpty();
      db.run("INSERT INTO review SELECT ?, ?, CASE WHEN ? AND state = 'checked' THEN 'recheck' ELSE state END, note, kind, detail, reason,"
          + " 1, 1, updated FROM review WHERE analysis = ? AND junction = ?",
          after, pair.after().id(), changed, before, pair.before().id());
    }
    db.run("UPDATE finding SET (state, reason, assignee, version, updated) = (SELECT o.state, o.reason, o.assignee, 1, o.updated FROM finding o"
        + " WHERE o.analysis = ? AND o.id = finding.id) WHERE analysis = ? AND id IN (SELECT id FROM finding WHERE analysis = ? AND version > 0)",
        before, after, before);
    db.run("INSERT INTO comment(analysis, finding, author, text, created) SELECT ?, c.finding, c.author, c.text, c.created FROM comment c"
        + " JOIN finding f ON f.analysis = ? AND f.id = c.finding WHERE c.analysis = ? ORDER BY c.id", after, after, before);
  }
}
