-- Projects on servers of models, where analyses of their revisions come from, and how far the work on watched revisions is.

-- The report for people that belongs to a result: by the rules alone, and with the decisions in force, by their digest.
CREATE TABLE report(
  analysis TEXT NOT NULL REFERENCES analysis(id) ON DELETE CASCADE,
  decisions TEXT NOT NULL,
  text TEXT NOT NULL,
  PRIMARY KEY(analysis, decisions));

CREATE TABLE served_project(
  server TEXT NOT NULL,
  served INTEGER NOT NULL,
  name TEXT NOT NULL,
  project TEXT REFERENCES project(id) ON DELETE SET NULL,
  watched INTEGER NOT NULL DEFAULT 0,
  begun INTEGER NOT NULL DEFAULT 0,
  checked TEXT,
  problem_code TEXT,
  problem TEXT,
  PRIMARY KEY(server, served));

CREATE TABLE served_analysis(
  analysis TEXT PRIMARY KEY REFERENCES analysis(id) ON DELETE CASCADE,
  server TEXT NOT NULL,
  served INTEGER NOT NULL,
  revision INTEGER NOT NULL,
  number INTEGER NOT NULL,
  comment TEXT NOT NULL,
  FOREIGN KEY(server, served) REFERENCES served_project(server, served) ON DELETE CASCADE);

CREATE INDEX served_analysis_revision ON served_analysis(server, served, revision);

CREATE TABLE watched_revision(
  server TEXT NOT NULL,
  served INTEGER NOT NULL,
  revision INTEGER NOT NULL,
  number INTEGER NOT NULL,
  comment TEXT NOT NULL,
  created TEXT NOT NULL,
  stage TEXT NOT NULL,
  attempts INTEGER NOT NULL DEFAULT 0,
  analysis TEXT REFERENCES analysis(id) ON DELETE SET NULL,
  problem TEXT,
  PRIMARY KEY(server, served, revision),
  FOREIGN KEY(server, served) REFERENCES served_project(server, served) ON DELETE CASCADE);
