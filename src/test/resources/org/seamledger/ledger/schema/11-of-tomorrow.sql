-- A step of a version that is not written yet.
CREATE TABLE tomorrow(
  id TEXT PRIMARY KEY);
