-- What a photo shows, to be found again: its pixels, and its likeness cut into three numbers that are indexed each.
ALTER TABLE photo ADD COLUMN pixels TEXT;
CREATE INDEX photo_by_pixels ON photo (company, pixels) WHERE pixels IS NOT NULL;

-- The phone's clock when a job first named the photo.
ALTER TABLE photo_use ADD COLUMN made INTEGER;

-- place 0: the picture without even bars around it; then with some, with all of them.
CREATE TABLE photo_look (
  company TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  place INTEGER NOT NULL,
  first INTEGER NOT NULL,
  second INTEGER NOT NULL,
  third INTEGER NOT NULL,
  PRIMARY KEY (company, sha256, place)
) STRICT;
CREATE INDEX photo_look_by_first ON photo_look (company, first);
CREATE INDEX photo_look_by_second ON photo_look (company, second);
CREATE INDEX photo_look_by_third ON photo_look (company, third);

-- Two photos that show the same, the later one first; for the same bytes in two jobs both are the one photo.
CREATE TABLE seen_before (
  company TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  before TEXT NOT NULL,
  how TEXT NOT NULL,
  distance INTEGER NOT NULL,
  turn INTEGER NOT NULL,
  found INTEGER NOT NULL,
  PRIMARY KEY (company, sha256, before)
) STRICT, WITHOUT ROWID;
CREATE INDEX seen_before_of_earlier ON seen_before (company, before);
CREATE INDEX seen_before_by_found ON seen_before (company, found);
