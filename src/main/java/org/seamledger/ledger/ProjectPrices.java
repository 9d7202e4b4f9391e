package org.seamledger.ledger;

import java.util.Optional;

/** The price lists of projects: the text that was sent, whole. */
public final class ProjectPrices {

  private final Database db;

  ProjectPrices(Database db) {
    this.db = db;
  }

  /** @param name of the file that was sent */
  public record Stored(String name, String text, String updated) {
  }

  /** The list of a project; empty where it has none. */
  public Optional<Stored> of(String project) {
    return db.read(() -> db.one("SELECT name, text, updated FROM prices WHERE project = ?",
        r -> new Stored(r.getString(1), r.getString(2), r.getString(3)), project));
  }

  /** @throws LedgerException where there is no such project */
  public void put(String project, String name, String text) {
    db.transaction(() -> {
      if (db.one("SELECT 1 FROM project WHERE id = ?", r -> 1, project).isEmpty()) {
        throw new LedgerException(LedgerException.Reason.NOT_FOUND, "There is no such project.");
      }
      db.run("INSERT INTO prices(project, name, text, updated) VALUES(?,?,?,?) ON CONFLICT(project) DO UPDATE SET"
          + " name = excluded.name, text = excluded.text, updated = excluded.updated", project, name, text, Analyses.now());
      return null;
    });
  }

  public void remove(String project) {
    db.transaction(() -> {
      db.run("DELETE FROM prices WHERE project = ?", project);
      return null;
    });
  }
}
