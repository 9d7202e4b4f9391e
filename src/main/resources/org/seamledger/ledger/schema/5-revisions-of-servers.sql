-- Each model of an analysis may come from a server; what people call a revision is the server's number wherever there is one.

-- Where the file comes from, if from a server: the revision with its number, comment and check-in date.
ALTER TABLE file ADD COLUMN server TEXT;
ALTER TABLE file ADD COLUMN served INTEGER;
ALTER TABLE file ADD COLUMN served_revision INTEGER;
ALTER TABLE file ADD COLUMN number INTEGER;
ALTER TABLE file ADD COLUMN comment TEXT;
ALTER TABLE file ADD COLUMN checked_in TEXT;

CREATE INDEX file_served ON file(server, served, served_revision);

-- Analyses that read a server's model again, under another roof system, have its path.
UPDATE file SET
  server = (SELECT s.server FROM served_analysis s JOIN file g ON g.analysis = s.analysis AND g.place = 0 WHERE g.path = file.path),
  served = (SELECT s.served FROM served_analysis s JOIN file g ON g.analysis = s.analysis AND g.place = 0 WHERE g.path = file.path),
  served_revision = (SELECT s.revision FROM served_analysis s JOIN file g ON g.analysis = s.analysis AND g.place = 0 WHERE g.path = file.path),
  number = (SELECT s.number FROM served_analysis s JOIN file g ON g.analysis = s.analysis AND g.place = 0 WHERE g.path = file.path),
  comment = (SELECT s.comment FROM served_analysis s JOIN file g ON g.analysis = s.analysis AND g.place = 0 WHERE g.path = file.path)
  WHERE role = 'model';

UPDATE file SET checked_in = COALESCE((SELECT w.created FROM watched_revision w
  WHERE w.server = file.server AND w.served = file.served AND w.revision = file.served_revision), '')
  WHERE server IS NOT NULL;

DROP TABLE served_analysis;

-- The column revision counts the analyses of a project as they come; number, run and numbering are what people see, and their order.
ALTER TABLE analysis ADD COLUMN number INTEGER NOT NULL DEFAULT 1;
ALTER TABLE analysis ADD COLUMN run INTEGER NOT NULL DEFAULT 1;
ALTER TABLE analysis ADD COLUMN numbering TEXT NOT NULL DEFAULT 'own';

UPDATE analysis SET number = revision;

UPDATE analysis SET numbering = 'server', number = (SELECT MAX(f.number) FROM file f WHERE f.analysis = analysis.id)
  WHERE id IN (SELECT f.analysis FROM file f WHERE f.server IS NOT NULL);

UPDATE analysis SET numbering = 'upload', number = COALESCE((SELECT MAX(b.number) FROM analysis b
  WHERE b.project = analysis.project AND b.numbering = 'server' AND b.revision < analysis.revision), 1)
  WHERE numbering = 'own' AND project IN (SELECT p.project FROM served_project p WHERE p.project IS NOT NULL);

UPDATE analysis SET run = (SELECT COUNT(*) FROM analysis b
  WHERE b.project = analysis.project AND b.number = analysis.number AND b.revision <= analysis.revision);
