-- What was erased on request, or when a period had ended. Reading back an older backup takes it out again.
-- kind 'object': ref is its key in the store. 'body': ref is job and entry with a slash between, content the parts as JSON.
-- 'person', 'site', 'old warranty', 'release', 'others link': ref is its id or hash, content what stands in its place.
CREATE TABLE erased (
  company TEXT NOT NULL,
  kind TEXT NOT NULL,
  ref TEXT NOT NULL,
  content TEXT,
  at INTEGER NOT NULL,
  -- Of an object: when the store had let go of it. Until then it is tried again.
  gone INTEGER,
  PRIMARY KEY (company, kind, ref)
) STRICT, WITHOUT ROWID;
CREATE INDEX erased_not_gone ON erased (at) WHERE kind = 'object' AND gone IS NULL;
