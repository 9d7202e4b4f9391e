-- Who accepted a finding, and when; the name of who did so before it was asked for is not known.
ALTER TABLE finding ADD COLUMN accepted_by TEXT NOT NULL DEFAULT '';
ALTER TABLE finding ADD COLUMN accepted_at TEXT NOT NULL DEFAULT '';

UPDATE finding SET accepted_at = updated WHERE state = 'accepted';
