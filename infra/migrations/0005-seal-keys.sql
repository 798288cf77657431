-- The keys with which a company's records are sealed. The private half is wrapped with the secret of the environment; a retired key
-- stays, so that what it sealed can be verified. x is the public half, kid its thumbprint (RFC 7638).
CREATE TABLE seal_key (
  company TEXT NOT NULL,
  kid TEXT NOT NULL,
  x TEXT NOT NULL,
  wrapped TEXT NOT NULL,
  made INTEGER NOT NULL,
  retired INTEGER,
  PRIMARY KEY (company, kid)
) STRICT, WITHOUT ROWID;
CREATE UNIQUE INDEX seal_key_in_use ON seal_key (company) WHERE retired IS NULL;
