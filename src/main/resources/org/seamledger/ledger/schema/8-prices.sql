-- The price list of a project, as it was sent.
CREATE TABLE prices(
  project TEXT PRIMARY KEY REFERENCES project(id) ON DELETE CASCADE,
  name TEXT NOT NULL,
  text TEXT NOT NULL,
  updated TEXT NOT NULL);
