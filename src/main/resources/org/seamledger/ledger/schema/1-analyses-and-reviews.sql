-- Projects, their analyses with files and results, and what people said about junctions and findings.
-- IF NOT EXISTS in this step alone: folders from before the steps were counted have these tables already.

CREATE TABLE IF NOT EXISTS project(
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  created TEXT NOT NULL);

CREATE TABLE IF NOT EXISTS analysis(
  id TEXT PRIMARY KEY,
  project TEXT NOT NULL REFERENCES project(id) ON DELETE CASCADE,
  revision INTEGER NOT NULL,
  state TEXT NOT NULL,
  title TEXT NOT NULL,
  created TEXT NOT NULL,
  finished TEXT,
  problem_code TEXT,
  problem TEXT,
  origin TEXT,
  UNIQUE(project, revision));

CREATE TABLE IF NOT EXISTS file(
  analysis TEXT NOT NULL REFERENCES analysis(id) ON DELETE CASCADE,
  place INTEGER NOT NULL,
  name TEXT NOT NULL,
  path TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  role TEXT NOT NULL,
  PRIMARY KEY(analysis, place));

CREATE TABLE IF NOT EXISTS ledger(
  analysis TEXT PRIMARY KEY REFERENCES analysis(id) ON DELETE CASCADE,
  sha256 TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  gzip BLOB NOT NULL);

CREATE TABLE IF NOT EXISTS junction(
  analysis TEXT NOT NULL REFERENCES analysis(id) ON DELETE CASCADE,
  id TEXT NOT NULL,
  PRIMARY KEY(analysis, id)) WITHOUT ROWID;

CREATE TABLE IF NOT EXISTS finding(
  analysis TEXT NOT NULL REFERENCES analysis(id) ON DELETE CASCADE,
  id TEXT NOT NULL,
  place INTEGER NOT NULL,
  state TEXT NOT NULL DEFAULT 'open',
  reason TEXT NOT NULL DEFAULT '',
  assignee TEXT NOT NULL DEFAULT '',
  version INTEGER NOT NULL DEFAULT 0,
  updated TEXT NOT NULL DEFAULT '',
  PRIMARY KEY(analysis, id)) WITHOUT ROWID;

CREATE TABLE IF NOT EXISTS comment(
  id COUNTER,
  analysis TEXT NOT NULL,
  finding TEXT NOT NULL,
  author TEXT NOT NULL,
  text TEXT NOT NULL,
  created TEXT NOT NULL,
  FOREIGN KEY(analysis, finding) REFERENCES finding(analysis, id) ON DELETE CASCADE);

CREATE TABLE IF NOT EXISTS review(
  analysis TEXT NOT NULL,
  junction TEXT NOT NULL,
  state TEXT NOT NULL,
  note TEXT NOT NULL,
  kind TEXT NOT NULL,
  detail TEXT NOT NULL,
  reason TEXT NOT NULL,
  carried INTEGER NOT NULL DEFAULT 0,
  version INTEGER NOT NULL,
  updated TEXT NOT NULL,
  PRIMARY KEY(analysis, junction),
  FOREIGN KEY(analysis, junction) REFERENCES junction(analysis, id) ON DELETE CASCADE) WITHOUT ROWID;

CREATE INDEX IF NOT EXISTS comment_finding ON comment(analysis, finding);
