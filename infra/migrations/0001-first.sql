-- Everything belongs to a company: its id stands first in every key, so that no query can reach into another's rows.
CREATE TABLE company (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  zone TEXT NOT NULL,
  units TEXT NOT NULL,
  language TEXT NOT NULL,
  made INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE person (
  company TEXT NOT NULL,
  id TEXT NOT NULL,
  name TEXT NOT NULL,
  role TEXT NOT NULL,
  came INTEGER NOT NULL,
  left_at INTEGER,
  PRIMARY KEY (company, id)
) STRICT, WITHOUT ROWID;

-- Tokens of sessions and links are kept as their SHA-256 only.
CREATE TABLE session (
  hash TEXT PRIMARY KEY,
  company TEXT NOT NULL,
  person TEXT NOT NULL,
  phone TEXT NOT NULL,
  began INTEGER NOT NULL,
  ended INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX session_of_person ON session (company, person);

CREATE TABLE link (
  hash TEXT PRIMARY KEY,
  company TEXT NOT NULL,
  person TEXT NOT NULL,
  ends INTEGER NOT NULL,
  used INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX link_of_person ON link (company, person);

CREATE TABLE job (
  company TEXT NOT NULL,
  id TEXT NOT NULL,
  opened INTEGER NOT NULL,
  PRIMARY KEY (company, id)
) STRICT, WITHOUT ROWID;

-- The ledgers: of jobs, and of the company itself under a job id that no phone may use.
CREATE TABLE entry (
  company TEXT NOT NULL,
  job TEXT NOT NULL,
  number INTEGER NOT NULL,
  id TEXT NOT NULL,
  kind TEXT NOT NULL,
  digest TEXT NOT NULL,
  hash TEXT NOT NULL,
  envelope TEXT NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (company, job, number),
  UNIQUE (company, job, id)
) STRICT;

-- Content of the company's things by its digest; number is that of the entry in the company's ledger.
CREATE TABLE version (
  company TEXT NOT NULL,
  number INTEGER NOT NULL,
  kind TEXT NOT NULL,
  name TEXT NOT NULL,
  digest TEXT NOT NULL,
  content TEXT NOT NULL,
  PRIMARY KEY (company, number)
) STRICT;
CREATE INDEX version_by_digest ON version (company, digest);
CREATE INDEX version_by_name ON version (company, kind, name, number);

-- What the core made of a job, with the number of the last entry that it saw and the rules it went by.
CREATE TABLE finding (
  company TEXT NOT NULL,
  job TEXT NOT NULL,
  number INTEGER NOT NULL,
  rules INTEGER NOT NULL,
  computed TEXT NOT NULL,
  PRIMARY KEY (company, job)
) STRICT;

CREATE TABLE photo (
  company TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  type TEXT NOT NULL,
  state TEXT NOT NULL,
  facts TEXT,
  given_up INTEGER,
  stored INTEGER NOT NULL,
  PRIMARY KEY (company, sha256)
) STRICT;

-- Which jobs name which photo; the bytes may come before or after.
CREATE TABLE photo_use (
  company TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  job TEXT NOT NULL,
  PRIMARY KEY (company, sha256, job)
) STRICT, WITHOUT ROWID;
CREATE INDEX photo_use_by_job ON photo_use (company, job);

-- What is still owed: 'read' a photo, 'tell' a job what was read. The queue is only a hint to do it sooner.
CREATE TABLE owed (
  kind TEXT NOT NULL,
  company TEXT NOT NULL,
  ref TEXT NOT NULL,
  due INTEGER NOT NULL,
  tries INTEGER NOT NULL DEFAULT 0,
  PRIMARY KEY (kind, company, ref)
) STRICT, WITHOUT ROWID;
CREATE INDEX owed_by_due ON owed (due);

CREATE TABLE record (
  company TEXT NOT NULL,
  id TEXT NOT NULL,
  job TEXT NOT NULL,
  version INTEGER NOT NULL,
  edition TEXT NOT NULL,
  head_number INTEGER NOT NULL,
  head_hash TEXT NOT NULL,
  pages INTEGER NOT NULL,
  bytes INTEGER NOT NULL,
  sha256 TEXT NOT NULL,
  issued INTEGER NOT NULL,
  PRIMARY KEY (company, id),
  UNIQUE (company, job, version)
) STRICT;
