-- A record released to its receiver: its page and PDF by a link that the office ends. The token is kept as its SHA-256 only.
CREATE TABLE released_record (
  hash TEXT PRIMARY KEY,
  company TEXT NOT NULL,
  record TEXT NOT NULL,
  receiver TEXT NOT NULL,
  released INTEGER NOT NULL,
  ended INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX released_of_record ON released_record (company, record, released);
