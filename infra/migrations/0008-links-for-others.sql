-- Links for others (electrician, plumber): one job, one step, no sign-in, ended by use. The token is kept as its SHA-256 only.
CREATE TABLE others_link (
  hash TEXT PRIMARY KEY,
  company TEXT NOT NULL,
  job TEXT NOT NULL,
  step TEXT NOT NULL,
  what TEXT NOT NULL,
  made_by TEXT NOT NULL,
  made INTEGER NOT NULL,
  ends INTEGER NOT NULL,
  -- Files that were sent through it.
  files INTEGER NOT NULL DEFAULT 0,
  used INTEGER,
  withdrawn INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX others_link_of_job ON others_link (company, job, made);

-- Papers as PDF, by their hash.
CREATE TABLE paper (
  company TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  stored INTEGER NOT NULL,
  PRIMARY KEY (company, sha256)
) STRICT, WITHOUT ROWID;
