-- Several processes on one database: who they are, which analyses they have taken and how far these are, whose turn it is.

-- Which are taken first, the higher the earlier; who runs it now, by which ticket of the queue; how far it is.
ALTER TABLE analysis ADD COLUMN priority INTEGER NOT NULL DEFAULT 0;
ALTER TABLE analysis ADD COLUMN holder TEXT;
ALTER TABLE analysis ADD COLUMN ticket TEXT;
ALTER TABLE analysis ADD COLUMN stage TEXT;
ALTER TABLE analysis ADD COLUMN millionths INTEGER NOT NULL DEFAULT 0;
-- Why the result does not follow its decisions, where it could not.
ALTER TABLE analysis ADD COLUMN trouble TEXT;

CREATE INDEX analysis_state ON analysis(state, ticket);

-- When the last analysis of a project was begun, by counting.
CREATE TABLE turn(
  project TEXT PRIMARY KEY REFERENCES project(id) ON DELETE CASCADE,
  served INTEGER NOT NULL);

-- The processes that use the database; when each was seen last, in milliseconds since 1970 by the database's clock.
CREATE TABLE process(
  id TEXT PRIMARY KEY,
  work TEXT NOT NULL,
  host TEXT NOT NULL,
  version TEXT NOT NULL,
  rules TEXT NOT NULL,
  seen INTEGER NOT NULL);

-- Browsers that showed the token: the hash of what their cookie holds, and when it was used last.
CREATE TABLE session(
  id TEXT PRIMARY KEY,
  used INTEGER NOT NULL);

-- The tickets of the queue, in the form of the library that hands them out.
CREATE TABLE scheduled_tasks(
  task_name TEXT NOT NULL,
  task_instance TEXT NOT NULL,
  task_data BLOB,
  execution_time MOMENT,
  picked FLAG NOT NULL,
  picked_by TEXT,
  last_success MOMENT,
  last_failure MOMENT,
  consecutive_failures INTEGER,
  last_heartbeat MOMENT,
  version INTEGER NOT NULL,
  priority INTEGER,
  state TEXT,
  PRIMARY KEY(task_name, task_instance));

CREATE INDEX scheduled_tasks_time ON scheduled_tasks(execution_time);
CREATE INDEX scheduled_tasks_heartbeat ON scheduled_tasks(last_heartbeat);
CREATE INDEX scheduled_tasks_priority ON scheduled_tasks(priority, execution_time);
