-- Models that the processes on a database have in common through it, where they share no disk.

-- A file by its stored path: the large object that holds it, its size, and when it was sent last, in milliseconds since 1970.
CREATE TABLE model_object(
  path TEXT PRIMARY KEY,
  content INTEGER NOT NULL,
  bytes INTEGER NOT NULL,
  sent INTEGER NOT NULL);
