-- Parts of a photo that the office had blurred, and the digest that names the renditions in which they are. The original stays.
CREATE TABLE blurred (
  company TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  digest TEXT NOT NULL,
  regions TEXT NOT NULL,
  made INTEGER NOT NULL,
  PRIMARY KEY (company, sha256)
) STRICT, WITHOUT ROWID;
