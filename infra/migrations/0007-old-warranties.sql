-- Covers that began before this program, as imported: one line for each part of each of the company's own numbers.
CREATE TABLE old_warranty (
  company TEXT NOT NULL,
  number TEXT NOT NULL,
  part TEXT NOT NULL,
  content TEXT NOT NULL,
  PRIMARY KEY (company, number, part)
) STRICT, WITHOUT ROWID;
