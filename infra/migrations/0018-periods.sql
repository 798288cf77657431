-- The day, where the company is, on which its periods were last looked at: once a day is enough.
CREATE TABLE period_day (
  company TEXT PRIMARY KEY,
  day TEXT NOT NULL
) STRICT, WITHOUT ROWID;
