-- How often the analysis was begun without an end in good order: one during which the process died twice is not begun a third time.
ALTER TABLE analysis ADD COLUMN starts INTEGER NOT NULL DEFAULT 0;
