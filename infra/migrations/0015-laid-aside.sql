-- Why the last try of what is owed came to nothing: a refusal's code, or 'broke'. What was tried too often is laid aside, by its tries alone.
ALTER TABLE owed ADD COLUMN why TEXT;
