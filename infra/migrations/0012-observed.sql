-- What the company owner's questions read of each job, cut into the parts that a question asks for: rows of one part lie beside each
-- other, and an append rewrites those of its own job alone. number: of the last entry seen; made: by which form of the rows.
CREATE TABLE observed (
  company TEXT NOT NULL,
  part TEXT NOT NULL,
  job TEXT NOT NULL,
  number INTEGER NOT NULL,
  made INTEGER NOT NULL,
  content TEXT NOT NULL,
  PRIMARY KEY (company, part, job)
) STRICT, WITHOUT ROWID;
