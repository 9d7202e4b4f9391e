-- What the sections of a result show: parts of one result, numbered from 0, each compressed. Without them models are analysed again.
CREATE TABLE section_part(
  analysis TEXT NOT NULL REFERENCES analysis(id) ON DELETE CASCADE,
  sha256 TEXT NOT NULL,
  part INTEGER NOT NULL,
  gzip BLOB NOT NULL,
  PRIMARY KEY(analysis, sha256, part));
