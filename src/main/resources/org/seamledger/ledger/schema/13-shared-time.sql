-- The time that the processes on a database have in common: it goes on with the database's clock, and does not jump where that is set.

-- One row: that time, and what the database's clock said when somebody asked last, both in milliseconds since 1970.
CREATE TABLE shared_time(
  one INTEGER PRIMARY KEY,
  now INTEGER NOT NULL,
  clock INTEGER NOT NULL);
