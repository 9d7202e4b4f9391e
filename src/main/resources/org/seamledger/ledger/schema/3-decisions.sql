-- The result by the rules alone of an analysis whose result follows decisions of people, and a digest of these decisions.
CREATE TABLE by_rules(
  analysis TEXT PRIMARY KEY REFERENCES analysis(id) ON DELETE CASCADE,
  decisions TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  gzip BLOB NOT NULL);

-- Decisions carried over to a junction that changed: they have no effect until somebody looks.
CREATE TABLE stale(
  analysis TEXT NOT NULL,
  junction TEXT NOT NULL,
  PRIMARY KEY(analysis, junction),
  FOREIGN KEY(analysis, junction) REFERENCES junction(analysis, id) ON DELETE CASCADE) WITHOUT ROWID;
