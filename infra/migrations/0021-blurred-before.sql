-- Digests of parts of a photo that were blurred before others took their place. Their renditions stay: a released record may show
-- them; and they have to be known where the photo is erased. Filled with what the ledgers say of those before.
CREATE TABLE blurred_before (
  company TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  digest TEXT NOT NULL,
  PRIMARY KEY (company, sha256, digest)
) STRICT, WITHOUT ROWID;
INSERT INTO blurred_before (company, sha256, digest)
SELECT DISTINCT e.company, e.body ->> '$.what.content.photo', e.body ->> '$.what.content.rendition' FROM entry AS e
JOIN blurred AS b ON b.company = e.company AND b.sha256 = e.body ->> '$.what.content.photo'
WHERE e.kind = 'region-blurred' AND b.digest <> e.body ->> '$.what.content.rendition';
