-- A session is named by the digest of its first token; the tokens that it has had stand in a table of their own, because a
-- token is replaced from time to time. way: 'link', 'passkey' or 'code'. ends and idle: when it is over whatever happens, and
-- after how long without use, both in milliseconds.
ALTER TABLE session ADD COLUMN way TEXT NOT NULL DEFAULT 'link';
ALTER TABLE session ADD COLUMN device TEXT NOT NULL DEFAULT 'other';
ALTER TABLE session ADD COLUMN passkey TEXT;
ALTER TABLE session ADD COLUMN last INTEGER NOT NULL DEFAULT 0;
ALTER TABLE session ADD COLUMN renewed INTEGER NOT NULL DEFAULT 0;
ALTER TABLE session ADD COLUMN ends INTEGER NOT NULL DEFAULT 0;
ALTER TABLE session ADD COLUMN idle INTEGER NOT NULL DEFAULT 0;
-- Those that are open now keep what a crew's phone is given: 200 days, 60 of them without use.
UPDATE session SET last = began, renewed = began, ends = began + 17280000000, idle = 5184000000;

CREATE TABLE session_token (
  hash TEXT PRIMARY KEY,
  session TEXT NOT NULL,
  made INTEGER NOT NULL,
  seen INTEGER,
  ends INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX session_token_of_session ON session_token (session);
INSERT INTO session_token (hash, session, made, seen) SELECT hash, hash, began, began FROM session;

-- credential and public_key: base64url, as the authenticator gave them.
CREATE TABLE passkey (
  company TEXT NOT NULL,
  id TEXT NOT NULL,
  person TEXT NOT NULL,
  credential TEXT NOT NULL UNIQUE,
  public_key TEXT NOT NULL,
  counter INTEGER NOT NULL,
  transports TEXT NOT NULL,
  synced INTEGER NOT NULL,
  name TEXT NOT NULL,
  made INTEGER NOT NULL,
  last INTEGER,
  withdrawn INTEGER,
  PRIMARY KEY (company, id)
) STRICT, WITHOUT ROWID;
CREATE INDEX passkey_of_person ON passkey (company, person);

-- One per holder and purpose: of a session that makes a passkey, or of a try to sign in.
CREATE TABLE challenge (
  holder TEXT NOT NULL,
  purpose TEXT NOT NULL,
  challenge TEXT NOT NULL,
  ends INTEGER NOT NULL,
  PRIMARY KEY (holder, purpose)
) STRICT, WITHOUT ROWID;
CREATE INDEX challenge_by_end ON challenge (ends);

-- code: keyed digest of the digits; token: SHA-256 of what the square picture holds. Either uses both up.
CREATE TABLE join_code (
  company TEXT NOT NULL,
  id TEXT NOT NULL,
  person TEXT NOT NULL,
  code TEXT NOT NULL UNIQUE,
  token TEXT NOT NULL UNIQUE,
  made_by TEXT NOT NULL,
  made INTEGER NOT NULL,
  ends INTEGER NOT NULL,
  used INTEGER,
  withdrawn INTEGER,
  PRIMARY KEY (company, id)
) STRICT, WITHOUT ROWID;
CREATE INDEX join_code_of_person ON join_code (company, person);

-- How often somebody tried a door; key: keyed digest of the door and of an address, an account or a link.
CREATE TABLE tries (
  key TEXT PRIMARY KEY,
  began INTEGER NOT NULL,
  ends INTEGER NOT NULL,
  count INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX tries_by_end ON tries (ends);
