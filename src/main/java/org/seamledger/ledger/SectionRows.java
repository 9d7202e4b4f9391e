package org.seamledger.ledger;

import java.util.List;
import java.util.Optional;

/** What the sections of results show, by analysis and hash of the result: what is not here is had by analysing the models again. */
public final class SectionRows {

  private final Database db;

  SectionRows(Database db) {
    this.db = db;
  }

  /**
   * Keeps all parts of one result, which may be about to be stored. Those go that belong to no result of the analysis any more: neither to
   * the one in force nor to that by the rules alone.
   */
  public void keep(String analysis, String sha256, List<byte[]> parts) {
    db.transaction(() -> {
      db.run("DELETE FROM section_part WHERE analysis = ? AND (sha256 = ? OR sha256 NOT IN (SELECT sha256 FROM ledger WHERE analysis = ?"
          + " UNION SELECT sha256 FROM by_rules WHERE analysis = ?))", analysis, sha256, analysis, analysis);
      if (db.one("SELECT 1 FROM analysis WHERE id = ?", r -> 1, analysis).isPresent()) {
        for (int i = 0; i < parts.size(); i++) {
          db.run("INSERT INTO section_part(analysis, sha256, part, gzip) VALUES(?,?,?,?)", analysis, sha256, i, parts.get(i));
        }
      }
      return null;
    });
  }

  /** A part of a result. */
  public Optional<byte[]> part(String analysis, String sha256, int part) {
    return db.read(() -> db.one("SELECT gzip FROM section_part WHERE analysis = ? AND sha256 = ? AND part = ?", r -> r.getBytes(1),
        analysis, sha256, part));
  }
}
