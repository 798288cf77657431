-- Past one database: companies lie in several of this one form, called shards here, each company in one. The first shard is the
-- directory as well.
--
-- Directory: where a company lies (placed), to which company a token leads (door), a move that is not over (moving); beside them what is
-- counted before any company is known (tries, challenge). Everything else is a company's own and goes with it, its sessions, links,
-- codes and passkeys too: they are written together with its ledger, and a batch does not reach over two databases.

-- A company without a row lies in the first shard. version: raised by every move.
CREATE TABLE placed (
  company TEXT PRIMARY KEY,
  shard TEXT NOT NULL,
  version INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- key: the digest by which a token, link or code is kept, or a passkey's credential. Those of companies in the first shard are read
-- from their own tables, so an installation with one database has no rows here.
CREATE TABLE door (
  key TEXT PRIMARY KEY,
  company TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- stage: clearing, copying, catching up, closed, moved, removing. part and after: how far the copy has come. holder: whose step came last.
CREATE TABLE moving (
  company TEXT PRIMARY KEY,
  source TEXT NOT NULL,
  target TEXT NOT NULL,
  stage TEXT NOT NULL,
  holder TEXT NOT NULL,
  part INTEGER NOT NULL,
  after TEXT NOT NULL,
  rows INTEGER NOT NULL,
  began INTEGER NOT NULL,
  closed INTEGER,
  switched INTEGER
) STRICT, WITHOUT ROWID;

-- Every shard: companies whose rows here are not, or not now, to be read or written by anybody but a move; holder: the step that may write.
CREATE TABLE closed (
  company TEXT PRIMARY KEY,
  since INTEGER NOT NULL,
  holder TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Every shard: rows of a company that changed while it was being copied, by triggers that are there only meanwhile. A row that changes
-- again gets a new number, so that no number means two changes.
CREATE TABLE changed (
  number INTEGER PRIMARY KEY AUTOINCREMENT,
  company TEXT NOT NULL,
  part TEXT NOT NULL,
  key TEXT NOT NULL,
  UNIQUE (company, part, key)
) STRICT;
