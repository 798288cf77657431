-- What the register of warranties and the list of callbacks read of each job, apart from its findings, which are many times larger.
-- number: of the last entry seen. An append rewrites the row of its own job.
CREATE TABLE after_work (
  company TEXT NOT NULL,
  job TEXT NOT NULL,
  number INTEGER NOT NULL,
  content TEXT NOT NULL,
  PRIMARY KEY (company, job)
) STRICT, WITHOUT ROWID;
