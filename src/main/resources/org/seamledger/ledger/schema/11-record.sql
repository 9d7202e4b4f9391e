-- What was done on the roof: events that are only ever added, photos, and the links that let people in.

-- The last event of each project's chain; who adds one takes this row first.
CREATE TABLE site_chain(
  project TEXT PRIMARY KEY REFERENCES project(id) ON DELETE CASCADE,
  events INTEGER NOT NULL,
  head TEXT NOT NULL);

-- body is the event as it is hashed; line is the id by which its place goes through all revisions, or empty.
CREATE TABLE site_event(
  project TEXT NOT NULL REFERENCES project(id) ON DELETE CASCADE,
  seq INTEGER NOT NULL,
  id TEXT NOT NULL,
  line TEXT NOT NULL,
  body TEXT NOT NULL,
  hash TEXT NOT NULL,
  PRIMARY KEY(project, seq),
  UNIQUE(project, id)) WITHOUT ROWID;

CREATE INDEX site_event_line ON site_event(project, line);

-- Where a junction goes by another id than in the revision in which it was first worked on.
CREATE TABLE site_line(
  analysis TEXT NOT NULL REFERENCES analysis(id) ON DELETE CASCADE,
  place TEXT NOT NULL,
  line TEXT NOT NULL,
  PRIMARY KEY(analysis, place)) WITHOUT ROWID;

-- event is the id of the event that shows it, which comes after it.
CREATE TABLE site_photo(
  project TEXT NOT NULL REFERENCES project(id) ON DELETE CASCADE,
  event TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  width INTEGER NOT NULL,
  height INTEGER NOT NULL,
  location TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  jpeg BLOB NOT NULL,
  PRIMARY KEY(project, event));

-- token is the SHA-256 of what the link holds.
CREATE TABLE site_link(
  id TEXT PRIMARY KEY,
  token TEXT NOT NULL UNIQUE,
  project TEXT NOT NULL REFERENCES project(id) ON DELETE CASCADE,
  scope TEXT NOT NULL,
  name TEXT NOT NULL,
  created TEXT NOT NULL,
  expires TEXT NOT NULL,
  revoked TEXT NOT NULL DEFAULT '');
