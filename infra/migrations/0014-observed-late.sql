-- Jobs whose ledgers have grown since the owner's rows were made of them. Every append says so in its own batch, so that what is behind
-- is known without a look at any ledger. number: of the newest entry.
CREATE TABLE observed_late (
  company TEXT NOT NULL,
  job TEXT NOT NULL,
  number INTEGER NOT NULL,
  PRIMARY KEY (company, job)
) STRICT, WITHOUT ROWID;

INSERT INTO observed_late (company, job, number)
  SELECT j.company, j.id, (SELECT max(e.number) FROM entry AS e WHERE e.company = j.company AND e.job = j.id)
  FROM job AS j LEFT JOIN observed AS o ON o.company = j.company AND o.part = 'job' AND o.job = j.id
  WHERE EXISTS (SELECT 1 FROM entry AS e WHERE e.company = j.company AND e.job = j.id AND e.number > coalesce(o.number, 0));
