-- Version 2: what a step said when it was ticked, so that the difference can be told in words, not
-- only noticed; makers who do things for the first time; and which step left what lies on the shelf,
-- so that taking its tick back takes that back.
ALTER TABLE tick ADD COLUMN said TEXT NOT NULL DEFAULT '' CHECK (length(said) <= 8000);
ALTER TABLE workshop ADD COLUMN learner INTEGER NOT NULL DEFAULT 0 CHECK (learner IN (0, 1));
ALTER TABLE leftover ADD COLUMN from_step TEXT NOT NULL DEFAULT '' CHECK (length(from_step) <= 80);

PRAGMA user_version = 2;
