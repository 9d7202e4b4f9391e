package org.seamledger.ledger;

/** The random name that a storage gets when it is made. */
final class Identity {

  private Identity() {
  }

  static String of(Database db) {
    return db.transaction(() -> {
      db.run("INSERT INTO storage(id) SELECT ? WHERE NOT EXISTS (SELECT 1 FROM storage)", Analyses.newId());
      return db.one("SELECT id FROM storage", r -> r.getString(1)).orElseThrow();
    });
  }
}
