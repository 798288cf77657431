-- What the list of jobs and the list of what is about to be buried read of each job, apart from its findings, which are many times
-- larger: every open page asks for the list again and again. number: of the last entry seen; rules: by which.
CREATE TABLE listed (
  company TEXT NOT NULL,
  job TEXT NOT NULL,
  number INTEGER NOT NULL,
  rules INTEGER NOT NULL,
  content TEXT NOT NULL,
  PRIMARY KEY (company, job)
) STRICT, WITHOUT ROWID;
