-- Movements that people asked for of models of an analysis, as dx,dy,dz[,degrees[,factor]]; a file without one lies as the models say.
CREATE TABLE placement(
  analysis TEXT NOT NULL,
  place INTEGER NOT NULL,
  movement TEXT NOT NULL,
  PRIMARY KEY(analysis, place),
  FOREIGN KEY(analysis, place) REFERENCES file(analysis, place) ON DELETE CASCADE);
