-- A step that fails halfway.
CREATE TABLE half(id TEXT PRIMARY KEY);
CREATE TABLE half(id TEXT PRIMARY KEY);
