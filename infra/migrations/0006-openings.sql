-- Sites as the company's ledger has them; their jobs share address, position and marks.
CREATE TABLE site (
  company TEXT NOT NULL,
  id TEXT NOT NULL,
  number INTEGER NOT NULL,
  content TEXT NOT NULL,
  PRIMARY KEY (company, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE job_site (
  company TEXT NOT NULL,
  site TEXT NOT NULL,
  job TEXT NOT NULL,
  PRIMARY KEY (company, site, job)
) STRICT, WITHOUT ROWID;

-- The company's own job numbers. line: digest of the line of a table that the job was last opened or changed from.
CREATE TABLE own_number (
  company TEXT NOT NULL,
  number TEXT NOT NULL,
  job TEXT NOT NULL,
  line TEXT,
  PRIMARY KEY (company, number)
) STRICT, WITHOUT ROWID;

INSERT INTO own_number (company, number, job)
  SELECT company, trim(body ->> '$.what.content.ownNumber'), min(job) FROM entry
  WHERE kind = 'job-opened' AND trim(coalesce(body ->> '$.what.content.ownNumber', '')) <> ''
  GROUP BY company, trim(body ->> '$.what.content.ownNumber');
