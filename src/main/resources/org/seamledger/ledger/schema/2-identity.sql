-- One row: a random name that tells this storage from every other one.
CREATE TABLE storage(
  id TEXT NOT NULL);
